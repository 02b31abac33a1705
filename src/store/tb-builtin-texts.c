/* Names and notes of the built-in documents, where translators' tools find them: those do not read JSON. A test
 * compares the list with the documents.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-document.h"

#include <glib/gi18n-lib.h>

const char *const tb_builtin_texts[] = {
  NC_ ("document", "League right-hander"),
  NC_ ("document", "A steady league delivery."),
  NC_ ("document", "League left-hander"),
  NC_ ("document", "Boards are counted from the left."),
  NC_ ("document", "Two-hander"),
  NC_ ("document", "No thumb in the ball: more revs, a lower finish."),
  NC_ ("document", "Senior"),
  NC_ ("document", "Less speed, an easy roll, a lighter ball."),
  NC_ ("document", "Junior, nine years old"),
  NC_ ("document", "Slow and straight, with a ball of eight pounds."),
  NC_ ("document", "Newcomer"),
  NC_ ("document", "A ball from the rack, thrown straight."),
  NC_ ("document", "Back-up bowler"),
  NC_ ("document", "The ball turns the other way."),
  NC_ ("document", "House ball, core unknown"),
  NC_ ("document", "From the rack: nobody knows its core or its finish. Typical values, not measured."),
  NC_ ("document", "Child's light ball"),
  NC_ ("document", "Eight pounds, for small hands. Typical values, not measured."),
  NC_ ("document", "Plain spare ball"),
  NC_ ("document", "Goes straight on any lane. Typical values, not measured."),
  NC_ ("document", "Round urethane"),
  NC_ ("document", "Reads early, turns round and smooth. Typical values, not measured."),
  NC_ ("document", "Mild pearl"),
  NC_ ("document", "Weak reactive cover, polished: saves itself for the back. Typical values, not measured."),
  NC_ ("document", "Light hybrid"),
  NC_ ("document", "Twelve pounds, for a slower hand. Typical values, not measured."),
  NC_ ("document", "Middle hybrid"),
  NC_ ("document", "The ball to compare others with. Typical values, not measured."),
  NC_ ("document", "Strong pearl"),
  NC_ ("document", "Strong cover, polished: late and sharp. Typical values, not measured."),
  NC_ ("document", "Strong solid"),
  NC_ ("document", "Strong cover, sanded: starts first. Typical values, not measured."),
  NC_ ("document", "House, evening"),
  NC_ ("document", "Short, 37 feet"),
  NC_ ("document", "Medium, 39 feet"),
  NC_ ("document", "Long, 43 feet"),
  NC_ ("document", "Flat, 40 feet"),
  NULL,
};
