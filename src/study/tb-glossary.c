/* The words are the trade's; the sentences say common practice, and figures where the rules of the sport give
 * them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-glossary.h"

#include <glib/gi18n-lib.h>
#include <string.h>

const TbTerm tb_glossary[] = {
  { "absorption",
    N_ ("Absorption"),
    N_ ("How fast oil soaks into a ball’s cover. Reactive covers drink it, plastic does not; what is left on "
        "the surface meets the lane again on the next turn."),
    { "cover", "reactive", "carry-down", NULL },
    { "absorption", NULL } },
  { "approach",
    N_ ("Approach"),
    N_ ("The floor from which the ball is bowled, at least 15 ft long, up to the foul line."),
    { "foul-line", "drift", NULL },
    { NULL } },
  { "arrows",
    N_ ("Arrows"),
    N_ ("Seven marks in the lane, on every fifth board, some 12 to 16 ft past the foul line. Bowlers aim "
        "there rather than at the pins; the second arrow is on board 10."),
    { "target", "board", "heads", NULL },
    { "board_at_arrows", NULL } },
  { "axis-migration",
    N_ ("Axis migration"),
    N_ ("The spin axis does not stay put on the ball: its core makes it wander from the PAP over the "
        "surface. That is why the track flares."),
    { "flare", "pap", "core", NULL },
    { NULL } },
  { "axis-rotation",
    N_ ("Axis rotation"),
    N_ ("Which way the ball turns, seen from above. At 0° it rolls end over end; at 90° it turns fully to "
        "the side. More of it points more of the slip aside, and the ball turns later."),
    { "axis-tilt", "side-roll", "forward-roll", NULL },
    { "axis_rotation_deg", NULL } },
  { "axis-tilt",
    N_ ("Axis tilt"),
    N_ ("How far the spin axis stands up from level. With much of it the ball spins like a top on a small "
        "track, skids longer and hooks less."),
    { "axis-rotation", "spin", "track", NULL },
    { "axis_tilt_deg", NULL } },
  { "back-up-ball",
    N_ ("Back-up ball"),
    N_ ("A ball that hooks the other way: to the right from a right-hander. Its axis rotation counts as "
        "negative."),
    { "axis-rotation", "hook", NULL },
    { NULL } },
  { "backend",
    N_ ("Backend"),
    N_ ("The last part of the lane, past the oil, where the ball turns and begins to roll."),
    { "heads", "breakpoint", "length", NULL },
    { NULL } },
  { "board",
    N_ ("Board"),
    N_ ("One of the 39 strips across a lane, each a little over an inch wide. They are counted from the "
        "bowler’s own side: from the right for a right-hander."),
    { "arrows", "laydown", "pocket", NULL },
    { NULL } },
  { "bowling-hand",
    N_ ("Bowling hand"),
    N_ ("A left-hander’s shot is the right-hander’s in a mirror, but left-handers are fewer, so their side "
        "of the lane wears more slowly."),
    { "board", "breakdown", NULL },
    { "hand", NULL } },
  { "breakdown",
    N_ ("Breakdown"),
    N_ ("Ball after ball takes oil away along the track that most people play, so that balls hook more and "
        "sooner there. Bowlers also say that the lane burns."),
    { "transition", "carry-down", NULL },
    { NULL } },
  { "breakpoint",
    N_ ("Breakpoint"),
    N_ ("The place where the ball is furthest out and turns back to the pins. A rule of thumb puts it on the "
        "board that the pattern’s length in feet less 31 gives."),
    { "length", "backend", "hook", NULL },
    { "breakpoint_board", "breakpoint_ft", NULL } },
  { "burning-up",
    N_ ("Burning up"),
    N_ ("A ball that spends its turn too soon arrives slow, flat and weak. Too rough a surface, or a line "
        "with too little oil, does it."),
    { "roll-out", "surface", "entry-angle", NULL },
    { NULL } },
  { "carry-down",
    N_ ("Carry-down"),
    N_ ("Oil that balls pick up in the front and leave further down the lane, where it had been dry. The "
        "ball that follows turns later."),
    { "breakdown", "transition", NULL },
    { NULL } },
  { "centre-of-mass",
    N_ ("Centre of mass"),
    N_ ("The point in which a ball would balance. The mark called CG on a new ball shows on which side it "
        "lies; holes move it a little."),
    { "top-weight", "static-weight", NULL },
    { NULL } },
  { "core",
    N_ ("Core"),
    N_ ("The dense block inside a ball. Its shape makes the ball easy or hard to spin about different axes, "
        "and so decides how it flares."),
    { "rg", "differential", "mass-bias", NULL },
    { NULL } },
  { "cover",
    N_ ("Cover"),
    N_ ("The shell of a ball, the part that touches the lane. What it is made of and how it is finished "
        "matter more to the hook than what is inside."),
    { "reactive", "urethane", "plastic", "surface", NULL },
    { "cover", NULL } },
  { "cross-tilt",
    N_ ("Cross-tilt"),
    N_ ("A lane is never quite level from side to side, and a ball drifts to the lower edge. A few "
        "hundredths of an inch are usual."),
    { "board", NULL },
    { "cross_tilt_in", NULL } },
  { "diameter",
    N_ ("Diameter"),
    N_ ("The rules allow a ball from 8.500 to 8.595 in across. Sanding makes it a little smaller each time."),
    { "weight", "surface", NULL },
    { "diameter_in", NULL } },
  { "differential",
    N_ ("Differential"),
    N_ ("The largest less the smallest radius of gyration. The larger it is the more a ball can flare, from "
        "nearly nothing to the 0.060 in that the rules allow."),
    { "rg", "intermediate-differential", "flare", NULL },
    { "differential_in", NULL } },
  { "drift",
    N_ ("Drift"),
    N_ ("How many boards the feet wander sideways from the first step to the slide. Where the feet began is "
        "not where the ball is laid down."),
    { "stance", "laydown", "approach", NULL },
    { NULL } },
  { "drilling-angle",
    N_ ("Drilling angle"),
    N_ ("The angle at the pin between the line to the PAP and the line to the mass bias. Pro shops expect "
        "a ball to roll sooner with a small one and later with a large one; as computed here it changes "
        "little."),
    { "layout", "pin-to-pap", "val-angle", "mass-bias", NULL },
    { "drilling_angle_deg", NULL } },
  { "entry-angle",
    N_ ("Entry angle"),
    N_ ("How steeply the ball comes in at the pins, measured against the boards. Some four to six degrees "
        "carry best; a flat ball deflects, a steep one leaves less room to miss."),
    { "pocket", "hook", "miss-room", NULL },
    { "angle_at_pins_deg", NULL } },
  { "film",
    N_ ("Film"),
    N_ ("The layer of oil between ball and lane, about a hundredth of a millimetre where it is thick. The "
        "trade counts it in units of 0.18 µm."),
    { "oil", "friction", "roughness", NULL },
    { NULL } },
  { "flare",
    N_ ("Flare"),
    N_ ("Each turn of a ball with a strong core leaves its ring of oil beside the last one. A ball that "
        "flares brings a dry strip to the lane every turn."),
    { "track", "differential", "pin-to-pap", "axis-migration", NULL },
    { "flare_in", "ring_spacing_in", NULL } },
  { "forward-roll",
    N_ ("Forward roll"),
    N_ ("Turning end over end, the way the ball travels. It rolls early and hooks little, which makes it "
        "dependable."),
    { "side-roll", "axis-rotation", "roll", NULL },
    { NULL } },
  { "foul-line",
    N_ ("Foul line"),
    N_ ("The line between approach and lane. A foot that crosses it scores nothing, and the oil behind it "
        "makes people fall."),
    { "approach", "laydown", NULL },
    { NULL } },
  { "friction",
    N_ ("Friction"),
    N_ ("What the lane does to a ball that slips: it slows it, and pushes it against the slip. Oil takes "
        "most of it away. Without friction there is no hook."),
    { "slip", "film", "surface", NULL },
    { "dry_friction", NULL } },
  { "grip-pressure",
    N_ ("Grip pressure"),
    N_ ("How tightly the hand holds the ball. A relaxed hand lets the ball swing freely; squeezing costs "
        "speed and lets the fingers turn it more. It should not hurt."),
    { "rev-rate", "speed", "span", NULL },
    { "grip_pressure", NULL } },
  { "grip-through-oil",
    N_ ("Grip through oil"),
    N_ ("How well a cover finds the lane through a film of oil. It is a number of the model, assumed for "
        "each kind of cover, and not printed on any ball."),
    { "film", "cover", "roughness", NULL },
    { "film_scale", NULL } },
  { "grit",
    N_ ("Grit"),
    N_ ("The number of the pad that finished a ball. 500 is coarse and grips soon; 4000 is fine and lets the "
        "ball go longer."),
    { "polish", "roughness", "surface", NULL },
    { "grit", NULL } },
  { "head-pin",
    N_ ("Head pin"),
    N_ ("The pin in front, in the middle of the lane, 60 ft from the foul line."),
    { "pocket", "strike", NULL },
    { NULL } },
  { "heads",
    N_ ("Heads"),
    N_ ("The first part of the lane, past the foul line, where the oil is thickest and the ball should skid. "
        "When the heads dry out balls hook too soon."),
    { "skid", "backend", "breakdown", NULL },
    { NULL } },
  { "hold",
    N_ ("Hold"),
    N_ ("Room for a miss to the inside: there is enough oil there to keep the ball from going high on the "
        "head pin."),
    { "recovery", "miss-room", "pattern", NULL },
    { NULL } },
  { "hook",
    N_ ("Hook"),
    N_ ("The turn of a ball’s path, and the middle part of its way, where it slips less and less and curves "
        "most. Boards hooked are counted from where the line it was sent on would have ended."),
    { "skid", "roll", "breakpoint", NULL },
    { "hook_board", "hook_start_ft", NULL } },
  { "house-pattern",
    N_ ("House pattern"),
    N_ ("The oil that a bowling centre puts out for leagues and guests: much in the middle, little outside, "
        "so that a miss to either side is forgiven."),
    { "pattern-ratio", "sport-pattern", "miss-room", NULL },
    { NULL } },
  { "hybrid",
    N_ ("Hybrid"),
    N_ ("A reactive cover that mixes solid and pearl. It stands between the two in where it turns."),
    { "solid", "pearl", "reactive", NULL },
    { NULL } },
  { "intermediate-differential",
    N_ ("Intermediate differential"),
    N_ ("The largest less the middle radius of gyration: how lopsided a core is. It is 0 for a symmetric "
        "core. Pro shops expect a sharper second change of direction from a large one; as computed here it "
        "changes little."),
    { "differential", "mass-bias", "rg", NULL },
    { "intermediate_differential_in", NULL } },
  { "landing",
    N_ ("Landing"),
    N_ ("A lofted ball meets the lane with many times its weight for a few thousandths of a second. That "
        "presses the oil thin and slows the ball; from high up it dents the lane."),
    { "loft", "film", "heads", NULL },
    { "landing_ft", "landing_speed_mph", "landing_load", "landing_slowed_mph", "landing_loss_j", NULL } },
  { "launch-line",
    N_ ("Launch line"),
    N_ ("The straight line on which the ball is sent away, through the laydown point and the target. Where "
        "it would have ended tells how much the ball hooked."),
    { "laydown", "target", "hook", NULL },
    { NULL } },
  { "laydown",
    N_ ("Laydown"),
    N_ ("The board on which the ball meets the lane, or would at the foul line. It is some six or seven "
        "boards outside the sliding foot."),
    { "target", "launch-line", "drift", NULL },
    { "laydown_board", NULL } },
  { "layout",
    N_ ("Layout"),
    N_ ("Where the grip is drilled relative to the core, for one bowler’s PAP: a drilling angle, a distance "
        "from pin to PAP and a VAL angle. Drilling is a pro shop’s work."),
    { "drilling-angle", "pin-to-pap", "val-angle", "pap", NULL },
    { NULL } },
  { "length",
    N_ ("Length"),
    N_ ("How many feet from the foul line a pattern’s oil reaches. House patterns end at some 37 to 41 ft. "
        "On a short one the ball is kept outside, on a long one it is played further in."),
    { "pattern", "volume", "breakpoint", NULL },
    { NULL } },
  { "loft",
    N_ ("Loft"),
    N_ ("How far the ball flies past the foul line before it lands. A few inches are usual. High lofting "
        "dents lanes, and many houses forbid it."),
    { "heads", "skid", "foul-line", NULL },
    { "loft_angle_deg", "loft_reach_in", "release_height_in", NULL } },
  { "mass-bias",
    N_ ("Mass bias"),
    N_ ("The side of a lopsided core on which it is heaviest, marked on the ball. Layouts are measured from "
        "it."),
    { "intermediate-differential", "drilling-angle", NULL },
    { NULL } },
  { "miss-room",
    N_ ("Miss room"),
    N_ ("How many boards the aim, and how many miles an hour the speed, may be off with the ball still "
        "finding the pocket."),
    { "hold", "recovery", "pocket", NULL },
    { NULL } },
  { "oil",
    N_ ("Oil"),
    N_ ("Lane oil protects the boards and lets balls skid. Where it is thick the ball keeps going straight; "
        "where it is thin or ends the ball turns."),
    { "film", "pattern", "volume", "friction", NULL },
    { "oil_exit_ft", "oil_exit_board", "time_in_oil_s", NULL } },
  { "pap",
    N_ ("PAP"),
    N_ ("Positive axis point: where the axis that a bowler’s ball turns about at release comes out of it, "
        "outside the grip. Each bowler has an own one; it is measured along the midline, then up or down."),
    { "layout", "axis-rotation", "axis-migration", NULL },
    { "pap_over_in", "pap_up_in", NULL } },
  { "pattern",
    N_ ("Pattern"),
    N_ ("How the oil is spread over the lane: how far, how much, and where it is thick. The amount of oil "
        "scales the whole of it."),
    { "length", "volume", "pattern-ratio", "house-pattern", NULL },
    { "pattern_scale", NULL } },
  { "pattern-ratio",
    N_ ("Pattern ratio"),
    N_ ("How many times more oil the middle has than the outside. House patterns have about 8 to 1 and "
        "forgive much; sport patterns have 4 to 1 or less."),
    { "house-pattern", "sport-pattern", "miss-room", NULL },
    { NULL } },
  { "pearl",
    N_ ("Pearl"),
    N_ ("A reactive cover with mica in it. It goes longer through the oil and turns later and more sharply "
        "than a solid one."),
    { "solid", "hybrid", "reactive", NULL },
    { NULL } },
  { "pin",
    N_ ("Pin"),
    N_ ("On a ball, the small coloured dot over the end of its core. Layouts are measured from it. "
        "Elsewhere, one of the ten that are to fall."),
    { "pin-to-pap", "layout", "core", NULL },
    { NULL } },
  { "pin-to-pap",
    N_ ("Pin to PAP"),
    N_ ("The distance over the surface from the pin to the positive axis point. Some 3 to 5 in make a ball "
        "flare most; very short and very long ones make it flare little."),
    { "flare", "pap", "pin", "layout", NULL },
    { "pin_to_pap_in", NULL } },
  { "pitch",
    N_ ("Pitch"),
    N_ ("How a hole leans away from the ball’s middle. Pitches decide how the hand leaves the ball, and "
        "whether it stays healthy: leave them to a pro shop."),
    { "span", "grip-pressure", NULL },
    { NULL } },
  { "plastic",
    N_ ("Plastic"),
    N_ ("A hard polyester cover that hooks little. Good for corner pins, where a straight ball is wanted."),
    { "urethane", "reactive", "spare", NULL },
    { NULL } },
  { "pocket",
    N_ ("Pocket"),
    N_ ("The place between the head pin and the pin beside it, on the bowler’s side, where strikes are made. "
        "The middle of the ball is then on about board 17½. The other pocket is its mirror image, on the far "
        "side of "
        "the head pin."),
    { "head-pin", "entry-angle", "strike", NULL },
    { "board_at_pins", NULL } },
  { "polish",
    N_ ("Polish"),
    N_ ("A compound that makes a cover smooth and shiny. The ball skids longer in oil and saves its turn for "
        "the backend."),
    { "grit", "surface", "roughness", NULL },
    { NULL } },
  { "reactive",
    N_ ("Reactive"),
    N_ ("A soft urethane cover with additives and fine pores that drinks oil. It grips a dry lane far better "
        "than plastic."),
    { "solid", "pearl", "hybrid", "absorption", NULL },
    { NULL } },
  { "recovery",
    N_ ("Recovery"),
    N_ ("Room for a miss to the outside: there is little oil there, and the ball comes back to the pocket."),
    { "hold", "miss-room", "pattern", NULL },
    { NULL } },
  { "rev-rate",
    N_ ("Rev rate"),
    N_ ("How many turns a minute the ball makes at release. 200 to 350 are common in leagues. More revs hook "
        "more; forcing them with the wrist or elbow strains both."),
    { "speed", "axis-rotation", "slip", NULL },
    { "rev_rate_rpm", "actual_rev_rate_rpm", "rev_rate_at_pins_rpm", "revolutions", NULL } },
  { "rg",
    N_ ("RG"),
    N_ ("Radius of gyration: how far from the middle a ball’s weight lies. A low one, from 2.46 in, spins up "
        "easily and rolls early; a high one, up to 2.80 in, goes longer."),
    { "differential", "core", NULL },
    { "rg_in", NULL } },
  { "roll",
    N_ ("Roll"),
    N_ ("The last part of the way: slip has gone, the surface moves exactly as fast as the ball, and the "
        "path is straight. The ball should get there shortly before the pins."),
    { "hook", "roll-out", "slip", NULL },
    { "roll_start_ft", NULL } },
  { "roll-out",
    N_ ("Roll-out"),
    N_ ("A ball that rolls long before the pins has no turn left. It looks as if it hooked and then quit."),
    { "roll", "burning-up", NULL },
    { NULL } },
  { "roughness",
    N_ ("Roughness"),
    N_ ("How high the fine scratches of a cover stand, as a gauge reads it: Ra, in millionths of an inch or "
        "of a metre. A rough ball reaches through oil that carries a smooth one."),
    { "grit", "surface", "film", NULL },
    { "roughness_uin", NULL } },
  { "side-roll",
    N_ ("Side roll"),
    N_ ("Turning across the way the ball travels. It is saved through the oil and pushes the ball aside "
        "where the lane is dry."),
    { "forward-roll", "axis-rotation", "hook", NULL },
    { NULL } },
  { "skid",
    N_ ("Skid"),
    N_ ("The first part of the way: the ball slides through the oil, hardly slows, and keeps its direction."),
    { "hook", "roll", "heads", NULL },
    { NULL } },
  { "slip",
    N_ ("Slip"),
    N_ ("How fast the ball’s surface moves over the boards where it touches them. Friction works against it "
        "until it is gone and the ball rolls."),
    { "friction", "skid", "roll", NULL },
    { NULL } },
  { "solid",
    N_ ("Solid"),
    N_ ("A reactive cover without mica. It finds the lane sooner and turns more evenly than a pearl."),
    { "pearl", "hybrid", "reactive", NULL },
    { NULL } },
  { "span",
    N_ ("Span"),
    N_ ("The distance between the thumb hole and a finger hole. Too long or too short a span strains the "
        "hand; a pro shop fits it."),
    { "pitch", "grip-pressure", NULL },
    { NULL } },
  { "spare",
    N_ ("Spare"),
    N_ ("All ten pins down with two balls. Straight balls at single pins make most of them."),
    { "strike", "plastic", NULL },
    { NULL } },
  { "speed",
    N_ ("Speed"),
    N_ ("How fast the ball leaves the hand; leagues see 15 to 18 mph. More of it gives friction less time, "
        "so the ball hooks less. A monitor down the lane shows less than this."),
    { "rev-rate", "skid", NULL },
    { "speed_mph", "actual_speed_mph", "speed_at_pins_mph", "time_s", NULL } },
  { "spin",
    N_ ("Spin"),
    N_ ("Turning in general; a spinner is a ball that turns like a top, with its axis nearly upright. That "
        "part of its spin does not hook the ball."),
    { "axis-tilt", "rev-rate", NULL },
    { NULL } },
  { "sport-pattern",
    N_ ("Sport pattern"),
    N_ ("A pattern with nearly as much oil outside as in the middle. The lane does not help: the ball goes "
        "where it was sent."),
    { "house-pattern", "pattern-ratio", NULL },
    { NULL } },
  { "stance",
    N_ ("Stance"),
    N_ ("Where a bowler stands before the first step, told as the board under the slide foot. Feet and "
        "target are moved together, two boards to one, to play another part of the lane."),
    { "drift", "laydown", "target", NULL },
    { NULL } },
  { "static-weight",
    N_ ("Static weight"),
    N_ ("How much one half of a drilled ball outweighs the other: top, side, finger. The rules allow 3 oz "
        "each way in a ball over 10 lb; it moves a ball only a little."),
    { "top-weight", "centre-of-mass", NULL },
    { NULL } },
  { "strike",
    N_ ("Strike"),
    N_ ("All ten pins down with the first ball."),
    { "pocket", "entry-angle", "spare", NULL },
    { NULL } },
  { "surface",
    N_ ("Surface"),
    N_ ("How a cover is finished: sanded with pads of some grit, or polished. It is the easiest thing to "
        "change about a ball, and one of the strongest."),
    { "grit", "polish", "roughness", "cover", NULL },
    { NULL } },
  { "target",
    N_ ("Target"),
    N_ ("What the bowler looks at and rolls the ball over, mostly at the arrows. One board there, from the "
        "same feet, moves the launch line by four at the pins."),
    { "arrows", "laydown", "launch-line", NULL },
    { "aim_board", NULL } },
  { "top-weight",
    N_ ("Top weight"),
    N_ ("How much heavier the half with the pin is than the other, before drilling. The holes take most of "
        "it away."),
    { "static-weight", "centre-of-mass", NULL },
    { "top_weight_oz", NULL } },
  { "track",
    N_ ("Track"),
    N_ ("On a ball, the rings where it touched the lane; on a lane, the boards that most people play, where "
        "the oil goes first."),
    { "flare", "breakdown", "axis-tilt", NULL },
    { NULL } },
  { "transition",
    N_ ("Transition"),
    N_ ("The change of a lane while people bowl on it. Good bowlers notice early and move, change balls, or "
        "both."),
    { "breakdown", "carry-down", NULL },
    { "games_played", NULL } },
  { "urethane",
    N_ ("Urethane"),
    N_ ("A cover between plastic and reactive. It turns early and evenly, and carries oil down the lane "
        "rather than drinking it."),
    { "reactive", "plastic", "carry-down", NULL },
    { NULL } },
  { "val",
    N_ ("VAL"),
    N_ ("Vertical axis line: the line on the ball through the PAP at right angles to the grip’s midline."),
    { "pap", "val-angle", "layout", NULL },
    { NULL } },
  { "val-angle",
    N_ ("VAL angle"),
    N_ ("The angle at the PAP between the vertical axis line and the line to the pin. Pro shops expect a "
        "sharper second change of direction from a small one and a smoother one from a large one; as "
        "computed here it changes little."),
    { "val", "drilling-angle", "pin-to-pap", "layout", NULL },
    { "val_angle_deg", NULL } },
  { "volume",
    N_ ("Volume"),
    N_ ("How much oil is on the lane altogether, some 20 to 27 mL for most patterns. More of it means more "
        "skid."),
    { "length", "pattern-ratio", "oil", NULL },
    { NULL } },
  { "weight",
    N_ ("Weight"),
    N_ ("At most 16 lb. A ball as heavy as the bowler can swing without strain keeps its way through the "
        "pins; a lighter one is thrown with more ease."),
    { "speed", "core", NULL },
    { "weight_lb", NULL } },
  { NULL, NULL, NULL, { NULL }, { NULL } },
};

const TbTerm *
tb_glossary_find (const char *id)
{
  for (const TbTerm *term = tb_glossary; term->id != NULL; term++)
    if (strcmp (term->id, id) == 0)
      return term;
  return NULL;
}

const TbTerm *
tb_glossary_for_name (const char *name)
{
  for (const TbTerm *term = tb_glossary; term->id != NULL; term++)
    if (g_strv_contains (term->names, name))
      return term;
  return NULL;
}

static int
compare_words (gconstpointer a, gconstpointer b)
{
  const TbTerm *const *one = a, *const *other = b;

  return g_utf8_collate (_ ((*one)->word), _ ((*other)->word));
}

GPtrArray *
tb_glossary_sorted (void)
{
  GPtrArray *terms = g_ptr_array_new ();

  for (const TbTerm *term = tb_glossary; term->id != NULL; term++)
    g_ptr_array_add (terms, (gpointer) term);
  g_ptr_array_sort (terms, compare_words);
  return terms;
}

gboolean
tb_term_matches_word (const TbTerm *self, const char *search)
{
  return g_str_match_string (search, _ (self->word), TRUE);
}

gboolean
tb_term_matches (const TbTerm *self, const char *search)
{
  g_autofree char *all = g_strconcat (_ (self->word), "\n", _ (self->text), NULL);

  return g_str_match_string (search, all, TRUE);
}
