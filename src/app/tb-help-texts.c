/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-help-texts.h"

#include <glib/gi18n-lib.h>

static const char *const ball_text[]
    = { N_ ("#Skid, hook, roll"),
        N_ ("The ball leaves the hand sliding: where it touches the lane, its surface moves over the boards. "
            "Friction works against that slip. It slows the ball, spins it up, and pushes it aside where the "
            "slip points aside: that is the hook. When the slip has gone the ball rolls, and hooks no more."),
        N_ ("Oil keeps the cover off the lane. How much it does depends on the film and on how rough the "
            "cover is: a rough surface reaches through a film that carries a smooth one. So a ball skids on "
            "the heads and turns where the oil ends."),
        N_ ("#What decides how much, and where"),
        N_ ("For a ball that gets to rolling, its release and its core fix the whole turn and the speed it "
            "loses, whatever the oil is. Oil, line and surface decide where it turns, and so on which board "
            "it ends. A ball that turns late has little lane left; one that turns early has spent its turn "
            "and goes straight, which looks like less hook."),
        N_ ("More speed means less time for friction to work before the pins. More revs, or more axis "
            "rotation, mean more slip to the side. A rough surface on the same line hooks more; on its own "
            "line to the pocket it may arrive flatter."),
        N_ ("#The ball's core and its oil"),
        N_ ("A core makes the spin axis wander over the ball, and each turn leaves its ring of oil a little "
            "further on. A ball that flares shows the lane a dry strip each turn; one that does not runs on "
            "its own oil."),
        N_ ("#Loft"),
        N_ ("In the air nothing rubs. A landing presses the film thin for a few thousandths of a second and "
            "rubs harder than the resting ball; a high arc also spends speed upwards."),
        NULL };

static const char *const figures_text[] = {
  N_ ("#Agrees"),
  N_ ("Skid, then hook, then roll, in that order, for every hooking shot (United States Bowling Congress, "
      "Ball Motion Study, 2008). Surface leads all other properties of the ball (same)."),
  N_ ("A strike line reported for 17.9 mph, 416 rpm and 45° on a film that is the same across the lane ends "
      "in the pocket, if the press counted board 28 from the left (AIP Advances 15, 045222, 2025)."),
  N_ ("About half the oil of the heads is gone from the track after 12 to 15 games (Bowlers Journal, August "
      "2015): the shares of oil that ball and lane exchange were chosen so."),
  N_ ("Closed forms of mechanics, three textbook problems, and independent solvers agree with the computed "
      "paths to a few thousandths of a board."),
  N_ ("#Disagrees"),
  N_ ("Coaching press has a ball lose 2 to 2.5 mph on the way. Here a ball that rolls has lost 2.5 to 3.8 "
      "mph, whatever the lane: speed on a monitor is measured further down."),
  N_ ("Tour reports of 2003 have the ball at board 11 to 12 near 41 ft on a 43 ft pattern. Here the most "
      "forgiving line on a 3 : 1 film goes about six boards further out. The film of that day is not "
      "published."),
  N_ ("Static weight is said to matter little. Three ounces of top weight move the ball by 1.3 boards here; "
      "surface, by nine."),
  N_ ("A ball that does not flare loses about eight boards here, all through its own oil. The direction is "
      "the trade's; the size is not known."),
  N_ ("#Left out"),
  N_ ("The air's sideways lift on a spinning ball, which nobody has measured near a lane, and the give of "
      "lane and cover."),
  NULL
};

static const char *const sources_text[]
    = { N_ ("#The lane and the ball"),
        N_ ("United States Bowling Congress, Equipment Specifications Manual: dimensions, weights, radii of "
            "gyration, roughness, static weights, holes. The current text supersedes what is said here."),
        N_ ("United States Bowling Congress, Ball Motion Study, 2008; technical note on the 10 pin; pattern "
            "study (press text)."),
        N_ ("#Mechanics"),
        N_ ("Coriolis, 1835, and any text on mechanics: the sliding and rolling sphere. Landau and Lifshitz, "
            "Mechanics, §37: the free top. Olver and Spikes, 1998: the friction of mixed films. Johnson, "
            "Contact Mechanics, 1985: the spot under the ball. Zhuravlev, 1998: spinning on it while it "
            "slips. Moreau, and Jean, 1999: slips that come to rest."),
        N_ ("#Injuries"),
        N_ ("Kerr, Collins and Comstock, Clinical Pediatrics 50, 2011; Zabierek and others, Journal of Sport "
            "Rehabilitation, 2022."),
        NULL };

static const char *const cautions_text[]
    = { N_ ("House rules, the local rulebook and qualified people come before anything said here."),
        N_ ("#On the lane"),
        N_ ("Never step past the foul line: the lane is oiled, and falls are the most common injury of older "
            "bowlers. Lift a ball with both hands on its sides."),
        N_ ("High lofting dents lanes; many houses forbid it. Ask the staff before you try it."),
        N_ ("#Wrist, elbow, thumb"),
        N_ ("Forcing revs by twisting strains the elbow and wrist. A thumb that is numb or tingles: stop, "
            "have the fit checked, and see a clinician if it stays."),
        N_ ("#Surface and drilling"),
        N_ ("Sand wet, in fresh air, with eye protection and a respirator for particles; keep sleeves away "
            "from a spinner. Solvents burn. Never heat a ball in an oven or microwave. Plugging and drilling "
            "are a pro shop's work."),
        N_ ("In competition no abrasive and no liquid may touch the ball once scoring has begun; ask the "
            "tournament."),
        NULL };

const TbHelpText tb_help_texts[] = { { "ball", N_ ("How the ball moves"), ball_text },
                                     { "figures", N_ ("Against what is published"), figures_text },
                                     { "sources", N_ ("Sources"), sources_text },
                                     { "cautions", N_ ("Cautions"), cautions_text },
                                     { NULL, NULL, NULL } };
