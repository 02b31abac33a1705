/* The clinic without a widget: slides in their order, keys, votes, the throw, what a room reads.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <gdk/gdk.h>
#include <locale.h>
#include <string.h>

#include "../scratch.h"
#include "../waiting.h"
#include "tb-clinic-page.h"
#include "tb-clinic-words.h"
#include "tb-projector.h"
#include "tb-task.h"

/* At the end, s; what was told to stop needs a moment. */
#define LAST_WORK 20

typedef struct Fixture
{
  TbLibrary *library;
  TbClinic *clinic;
} Fixture;

static TbStudy *
study_with (const char *field, double value)
{
  g_autoptr (TbStudy) start = tb_library_start_study ();
  g_autoptr (TbSetup) after = tb_setup_with_field (start->side[TB_SIDE_AFTER],
                                                   tb_field_find (TB_GROUP_DELIVERY, field), value, NULL);

  g_assert_nonnull (after);
  return tb_study_with_side (start, TB_SIDE_AFTER, after);
}

static void
set_up (Fixture *self, gconstpointer data)
{
  g_autoptr (TbStudy) study = study_with ("speed_mph", 19);

  self->library = tb_library_new ();
  self->clinic = tb_clinic_new (self->library, study, TB_UNITS_IMPERIAL);
}

static void
tear_down (Fixture *self, gconstpointer data)
{
  gpointer clinic = self->clinic;

  WAIT_UNTIL (!tb_clinic_is_busy (self->clinic));
  g_object_add_weak_pointer (G_OBJECT (self->clinic), &clinic);
  g_object_unref (self->clinic);
  g_assert_null (clinic);
  g_object_unref (self->library);
}

static char *
told (TbClinic *clinic)
{
  TbClinicPage *page = tb_clinic_page_new (clinic);
  char *sentences = tb_clinic_page_sentences (page);

  tb_clinic_page_free (page);
  return sentences;
}

/* A throw that cannot be made has no numbers, and its slides say why. */
static void
test_no_throw (void)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autoptr (TbStudy) start = tb_library_start_study ();
  TbShot shot = start->side[TB_SIDE_AFTER]->shot;
  g_autoptr (TbSetup) after = NULL;
  g_autoptr (TbStudy) study = NULL;
  g_autoptr (TbClinic) clinic = NULL;
  g_autofree char *text = NULL;

  shot.ball.intermediate_differential = 2 * shot.ball.differential;
  after = tb_setup_with_shot (start->side[TB_SIDE_AFTER], &shot);
  study = tb_study_with_side (start, TB_SIDE_AFTER, after);
  clinic = tb_clinic_new (library, study, TB_UNITS_IMPERIAL);
  tb_clinic_do (clinic, TB_CLINIC_ONWARD);
  WAIT_UNTIL (!tb_clinic_is_busy (clinic));
  while (tb_clinic_get_slide (clinic) != TB_CLINIC_NUMBERS)
    tb_clinic_do (clinic, TB_CLINIC_ONWARD);
  text = told (clinic);
  g_assert_nonnull (strstr (text, "Boards hooked: 25.8 before, – after."));
  g_assert_nonnull (strstr (text, "Intermediate differential: 0.09 is out of range"));
}

/* What the room is told to try does what it says, or says how far it gets. */
static void
test_tries (void)
{
  g_autoptr (TbStudy) start = tb_library_start_study ();
  TbSetup *after = start->side[TB_SIDE_AFTER];
  /* A rolling ball has no more turn to give: nothing gets there. */
  TbWish steep = { TB_WISH_ANGLE, 9, TRUE }, less = { TB_WISH_BOARDS, -3, FALSE };
  g_autoptr (TbNext) none = tb_next_find (&(TbNextQuestion){ .start = after, .wish = &steep }, NULL),
                     some = tb_next_find (&(TbNextQuestion){ .start = after, .wish = &less }, NULL);
  g_autofree char *nearest = tb_clinic_try_words (none, TB_UNITS_IMPERIAL),
                  *easiest = tb_clinic_try_words (some, TB_UNITS_IMPERIAL), *change = NULL;

  g_test_message ("%s\n%s", nearest, easiest);
  g_assert_null (tb_next_smallest (none));
  g_assert_nonnull (strstr (nearest, "Nothing gets all the way"));
  g_assert_cmpint (*(strchr (nearest, '\0') - 1), ==, ')');
  change = tb_next_change_text (tb_next_smallest (some), FALSE);
  g_assert_nonnull (strstr (easiest, change));
  g_assert_null (strstr (easiest, "all the way"));
}

/* What is still being worked out when a clinic goes neither keeps it nor goes on. */
static void
test_goes_at_once (gconstpointer talk)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autoptr (TbStudy) study = study_with ("speed_mph", 19);
  gpointer clinic = tb_clinic_new (library, study, TB_UNITS_IMPERIAL);

  g_object_add_weak_pointer (clinic, &clinic);
  tb_clinic_choose (clinic, GPOINTER_TO_UINT (talk));
  tb_clinic_do (clinic, TB_CLINIC_ONWARD);
  g_assert_true (tb_clinic_is_busy (clinic));
  g_object_unref (clinic);
  g_assert_null (clinic);
}

static void
onward (Fixture *self, guint times)
{
  for (guint i = 0; i < times; i++)
    tb_clinic_do (self->clinic, TB_CLINIC_ONWARD);
}

/* What to try is for what was wished, whenever that was. */
static void
test_wish (Fixture *self, gconstpointer data)
{
  TbSetup *from = tb_session_get_setup (tb_clinic_get_session (self->clinic), TB_SIDE_BEFORE);

  tb_clinic_set_wish (self->clinic, &(TbWish){ TB_WISH_BOARDS, -2, FALSE }, from);
  onward (self, 1);
  WAIT_UNTIL (!tb_clinic_is_busy (self->clinic));
  g_assert_cmpint (tb_clinic_get_next (self->clinic)->wish.kind, ==, TB_WISH_BOARDS);
  g_assert_cmpfloat (tb_clinic_get_next (self->clinic)->wish.amount, ==, -2);
  tb_clinic_set_wish (self->clinic, &(TbWish){ TB_WISH_POCKET, 0, FALSE }, from);
  g_assert_true (tb_clinic_is_busy (self->clinic));
  tb_clinic_set_wish (self->clinic, &(TbWish){ TB_WISH_BOARDS, -1, FALSE }, from);
  WAIT_UNTIL (!tb_clinic_is_busy (self->clinic));
  g_assert_cmpfloat (tb_clinic_get_next (self->clinic)->wish.amount, ==, -1);
  g_assert_nonnull (tb_clinic_get_why (self->clinic));
}

static void
check_slide (Fixture *self, TbClinicSlide slide)
{
  g_assert_cmpint (tb_clinic_get_slide (self->clinic), ==, slide);
}

/* Page Down from the first to the last: the throw takes two more, one for its beginning, one for its end. */
static void
test_order (Fixture *self, gconstpointer data)
{
  static const TbClinicSlide expected[]
      = { TB_CLINIC_START, TB_CLINIC_QUESTION, TB_CLINIC_VOTE, TB_CLINIC_THROW, TB_CLINIC_THROW,
          TB_CLINIC_THROW, TB_CLINIC_NUMBERS,  TB_CLINIC_WHY,  TB_CLINIC_TRY,   TB_CLINIC_TRY };

  for (guint i = 0; i < G_N_ELEMENTS (expected); i++)
    {
      check_slide (self, expected[i]);
      onward (self, 1);
    }
  g_assert_cmpuint (tb_clinic_get_n_slides (self->clinic), ==, 6);
  g_assert_cmpuint (tb_clinic_get_place (self->clinic), ==, 5);
  for (guint i = 0; i < 6; i++)
    tb_clinic_do (self->clinic, TB_CLINIC_BACK);
  check_slide (self, TB_CLINIC_START);
  g_assert_false (tb_clinic_do (self->clinic, TB_CLINIC_BACK));
}

static void
test_ends (Fixture *self, gconstpointer data)
{
  tb_clinic_do (self->clinic, TB_CLINIC_LAST);
  g_assert_cmpuint (tb_clinic_get_chosen (self->clinic), ==, tb_clinic_get_n_talks (self->clinic) - 1);
  tb_clinic_do (self->clinic, TB_CLINIC_FIRST);
  g_assert_cmpuint (tb_clinic_get_chosen (self->clinic), ==, 0);
  tb_clinic_do (self->clinic, TB_CLINIC_RESTART);
  check_slide (self, TB_CLINIC_QUESTION);
  tb_clinic_do (self->clinic, TB_CLINIC_LAST);
  check_slide (self, TB_CLINIC_TRY);
  tb_clinic_do (self->clinic, TB_CLINIC_RESTART);
  check_slide (self, TB_CLINIC_QUESTION);
}

/* A blank screen comes back as it was, whatever is pressed. */
static void
test_blank (Fixture *self, gconstpointer data)
{
  onward (self, 2);
  tb_clinic_do (self->clinic, TB_CLINIC_BLANK);
  g_assert_true (tb_clinic_is_blank (self->clinic));
  onward (self, 1);
  g_assert_false (tb_clinic_is_blank (self->clinic));
  check_slide (self, TB_CLINIC_VOTE);
  tb_clinic_do (self->clinic, TB_CLINIC_BLANK);
  tb_clinic_do (self->clinic, TB_CLINIC_VOTE_FIRST);
  g_assert_false (tb_clinic_is_blank (self->clinic));
  g_assert_cmpuint (tb_clinic_get_total (self->clinic), ==, 0);
}

static void
test_votes (Fixture *self, gconstpointer data)
{
  static const TbClinicAction typed[]
      = { TB_CLINIC_VOTE_FIRST,     TB_CLINIC_VOTE_FIRST + 2, TB_CLINIC_VOTE_FIRST + 2,
          TB_CLINIC_VOTE_FIRST + 1, TB_CLINIC_VOTE_FIRST + 5, TB_CLINIC_TAKE_BACK,
          TB_CLINIC_UNVOTE_FIRST,   TB_CLINIC_UNVOTE_FIRST };

  onward (self, 1);
  g_assert_false (tb_clinic_do (self->clinic, TB_CLINIC_VOTE_FIRST)); /* not on this slide */
  onward (self, 1);
  for (guint i = 0; i < G_N_ELEMENTS (typed); i++)
    tb_clinic_do (self->clinic, typed[i]);
  g_assert_cmpuint (tb_clinic_get_votes (self->clinic, 0), ==, 0);
  g_assert_cmpuint (tb_clinic_get_votes (self->clinic, 1), ==, 0);
  g_assert_cmpuint (tb_clinic_get_votes (self->clinic, 2), ==, 2);
  g_assert_cmpuint (tb_clinic_get_total (self->clinic), ==, 2);
  /* They stay through the talk, and through a new start of the same one. */
  onward (self, 4);
  check_slide (self, TB_CLINIC_NUMBERS);
  g_assert_cmpuint (tb_clinic_get_total (self->clinic), ==, 2);
  for (guint i = 0; i < 4; i++)
    tb_clinic_do (self->clinic, TB_CLINIC_BACK);
  onward (self, 2);
  g_assert_cmpuint (tb_clinic_get_votes (self->clinic, 2), ==, 2);
  tb_clinic_clear_votes (self->clinic);
  g_assert_cmpuint (tb_clinic_get_total (self->clinic), ==, 0);
  g_assert_false (tb_clinic_do (self->clinic, TB_CLINIC_TAKE_BACK));
}

/* Two miles an hour more hook less (common practice); the same throw hooks the same; a hundred revs more hook
 * more. */
static void
test_right (void)
{
  static const struct
  {
    const char *field;
    double value;
    int right;
  } cases[] = { { "speed_mph", 19, 2 }, { "speed_mph", 17, 1 }, { "rev_rate_rpm", 400, 0 } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TbStudy) study = study_with (cases[i].field, cases[i].value);
      g_autoptr (TbTalk) talk = tb_talk_from_study (study);

      g_assert_cmpint (tb_talk_step (talk, 0)->right, ==, cases[i].right);
    }
}

static void
test_verdict (Fixture *self, gconstpointer data)
{
  g_autofree char *none = NULL, *some = NULL, *all = NULL;

  onward (self, 2);
  none = tb_clinic_room_verdict (self->clinic);
  tb_clinic_vote (self->clinic, 2, 1);
  all = tb_clinic_room_verdict (self->clinic);
  tb_clinic_vote (self->clinic, 0, 1);
  tb_clinic_vote (self->clinic, 0, 1);
  some = tb_clinic_room_verdict (self->clinic);
  g_assert_cmpstr (none, ==, "");
  g_assert_cmpstr (all, ==, "All of you had it right: 1 vote.");
  g_assert_cmpstr (some, ==, "1 of 3 had it right.");
  g_assert_cmpstr (tb_clinic_answer (tb_clinic_get_step (self->clinic)), ==, "It hooks less");
}

static void
test_throw (Fixture *self, gconstpointer data)
{
  TbSession *session = tb_clinic_get_session (self->clinic);
  double frozen;

  onward (self, 3);
  g_assert_cmpfloat (tb_session_get_time (session), ==, 0);
  onward (self, 1);
  g_assert_true (tb_session_get_playing (session));
  tb_session_advance (session, 0.5);
  tb_clinic_do (self->clinic, TB_CLINIC_FREEZE);
  g_assert_false (tb_session_get_playing (session));
  frozen = tb_session_get_time (session);
  g_assert_cmpfloat (frozen, >, 0.4);
  tb_clinic_do (self->clinic, TB_CLINIC_FRAME_ON);
  g_assert_cmpfloat (tb_session_get_time (session), >, frozen);
  tb_clinic_do (self->clinic, TB_CLINIC_FRAME_BACK);
  tb_clinic_do (self->clinic, TB_CLINIC_FRAME_BACK);
  g_assert_cmpfloat (tb_session_get_time (session), <, frozen);
  tb_clinic_do (self->clinic, TB_CLINIC_FREEZE);
  g_assert_true (tb_session_get_playing (session));
  tb_clinic_do (self->clinic, TB_CLINIC_REPLAY);
  g_assert_cmpfloat (tb_session_get_time (session), ==, 0);
  check_slide (self, TB_CLINIC_THROW);
}

static void
test_rates (Fixture *self, gconstpointer data)
{
  static const double slower[] = { 0.5, 0.25, 0.125, 0.125 };
  TbSession *session = tb_clinic_get_session (self->clinic);

  onward (self, 3);
  for (guint i = 0; i < G_N_ELEMENTS (slower); i++)
    {
      tb_clinic_do (self->clinic, TB_CLINIC_DOWN);
      g_assert_cmpfloat (tb_session_get_rate (session), ==, slower[i]);
    }
  tb_clinic_do (self->clinic, TB_CLINIC_UP);
  g_assert_cmpfloat (tb_session_get_rate (session), ==, 0.25);
}

/* Where nothing is to move by itself, the throw goes from mark to mark, and then on. */
static void
test_still (Fixture *self, gconstpointer data)
{
  TbSession *session = tb_clinic_get_session (self->clinic);
  double last = 0;
  guint marks = 0;

  tb_clinic_set_still (self->clinic, TRUE);
  onward (self, 3);
  for (;; marks++)
    {
      onward (self, 1);
      if (tb_clinic_get_slide (self->clinic) != TB_CLINIC_THROW)
        break;
      g_assert_false (tb_session_get_playing (session));
      g_assert_cmpfloat (tb_session_get_time (session), >, last);
      last = tb_session_get_time (session);
    }
  /* Arrows, turn, roll and pins of both balls: some may coincide. */
  g_assert_cmpuint (marks, >=, 4);
  g_assert_cmpuint (marks, <=, 8);
  g_assert_cmpfloat (last, ==, tb_session_get_duration (session));
}

static void
test_keys (void)
{
  static const struct
  {
    guint keyval, plain, state;
    TbClinicAction action;
  } keys[] = {
    { GDK_KEY_Page_Down, GDK_KEY_Page_Down, 0, TB_CLINIC_ONWARD },
    { GDK_KEY_Page_Up, GDK_KEY_Page_Up, 0, TB_CLINIC_BACK },
    { GDK_KEY_F5, GDK_KEY_F5, 0, TB_CLINIC_RESTART },
    { GDK_KEY_F5, GDK_KEY_F5, GDK_SHIFT_MASK, TB_CLINIC_RESTART },
    { GDK_KEY_b, GDK_KEY_b, 0, TB_CLINIC_BLANK },
    { GDK_KEY_B, GDK_KEY_b, GDK_LOCK_MASK, TB_CLINIC_BLANK },
    { GDK_KEY_period, GDK_KEY_period, 0, TB_CLINIC_BLANK },
    { GDK_KEY_b, GDK_KEY_b, GDK_CONTROL_MASK, TB_CLINIC_NOTHING },
    { GDK_KEY_1, GDK_KEY_1, 0, TB_CLINIC_VOTE_FIRST },
    { GDK_KEY_6, GDK_KEY_6, 0, TB_CLINIC_VOTE_FIRST + 5 },
    { GDK_KEY_7, GDK_KEY_7, 0, TB_CLINIC_NOTHING },
    { GDK_KEY_KP_2, GDK_KEY_KP_2, 0, TB_CLINIC_VOTE_FIRST + 1 },
    { GDK_KEY_exclam, GDK_KEY_1, GDK_SHIFT_MASK, TB_CLINIC_UNVOTE_FIRST },
    { GDK_KEY_1, GDK_KEY_ampersand, GDK_SHIFT_MASK, TB_CLINIC_VOTE_FIRST }, /* digits above other signs */
    { GDK_KEY_x, GDK_KEY_x, 0, TB_CLINIC_NOTHING },
  };

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    g_assert_cmpint (tb_clinic_action_for_key (keys[i].keyval, keys[i].plain, keys[i].state), ==,
                     keys[i].action);
}

/* What could hurt stands on the slide of the question. */
static void
test_cautions (void)
{
  g_autoptr (TbStudy) loft = study_with ("loft_angle_deg", 6), speed = study_with ("speed_mph", 19);
  g_autofree char *of_loft = tb_talk_cautions (loft), *of_speed = tb_talk_cautions (speed);

  g_assert_nonnull (strstr (of_loft, "Lofting can damage a lane"));
  g_assert_cmpstr (of_speed, ==, "");
}

/* Every slide of every talk can be read: its words are there, its type is large enough for the back of a
 * room, and a screen reader is told all of it. */
static void
check_readable (TbClinic *clinic)
{
  static const int sizes[][2] = { { 1280, 680 }, { 1920, 1040 }, { 1024, 728 }, { 3840, 2120 } };
  g_autoptr (TbClinicPage) page = tb_clinic_page_new (clinic);
  g_autofree char *sentences = tb_clinic_page_sentences (page);

  page->slide.theme = tb_theme_contrast (1);
  g_assert_cmpstr (sentences, !=, "");
  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      double size = tb_slide_view_text_size (sizes[i][0], sizes[i][1], &page->slide);

      if (size < sizes[i][1] / 25.0)
        g_test_message ("%d x %d, %.1f px: %s", sizes[i][0], sizes[i][1], size, sentences);
      g_assert_cmpfloat (size, >=, sizes[i][1] / 25.0);
    }
}

static void
test_all_talks (Fixture *self, gconstpointer data)
{
  for (guint talk = 0; talk < tb_clinic_get_n_talks (self->clinic); talk++)
    {
      tb_clinic_choose (self->clinic, talk);
      check_readable (self->clinic);
      onward (self, 1);
      WAIT_UNTIL (!tb_clinic_is_busy (self->clinic));
      g_assert_null (tb_clinic_get_problem (self->clinic));
      for (guint place = 0; place < tb_clinic_get_n_slides (self->clinic); place++)
        {
          g_assert_cmpuint (tb_clinic_get_place (self->clinic), ==, place);
          g_assert_cmpint (tb_clinic_get_step (self->clinic)->right, >=, 0);
          check_readable (self->clinic);
          while (tb_clinic_get_place (self->clinic) == place
                 && place + 1 < tb_clinic_get_n_slides (self->clinic))
            onward (self, 1);
        }
      while (tb_clinic_get_slide (self->clinic) != TB_CLINIC_START)
        tb_clinic_do (self->clinic, TB_CLINIC_BACK);
    }
}

/* Two screens side by side, one above the other, and one that shows a part of the same. */
static void
test_rooms_screen (void)
{
  static const GdkRectangle laptop = { 0, 0, 1280, 800 }, beside = { 1280, 0, 1920, 1080 },
                            above = { 0, -1080, 1920, 1080 }, mirror = { 0, 0, 1024, 768 };
  const GdkRectangle two[] = { laptop, beside }, stacked[] = { above, laptop },
                     mirrored[] = { laptop, mirror }, three[] = { mirror, laptop, beside };

  g_assert_cmpint (tb_projector_choose (two, 2, 0), ==, 1);
  g_assert_cmpint (tb_projector_choose (two, 2, 1), ==, 0);
  g_assert_cmpint (tb_projector_choose (stacked, 2, 1), ==, 0);
  g_assert_cmpint (tb_projector_choose (mirrored, 2, 0), ==, -1);
  g_assert_cmpint (tb_projector_choose (three, 3, 1), ==, 2);
  g_assert_cmpint (tb_projector_choose (two, 1, 0), ==, -1);
  g_assert_cmpint (tb_projector_choose (two, 2, -1), ==, -1);
}

int
main (int argc, char **argv)
{
  int status;

  /* Not the user's own documents. */
  g_setenv ("XDG_DATA_HOME", scratch_folder (), TRUE);
  setlocale (LC_ALL, "C.UTF-8");
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/clinic/order", Fixture, NULL, set_up, test_order, tear_down);
  g_test_add ("/clinic/ends", Fixture, NULL, set_up, test_ends, tear_down);
  g_test_add ("/clinic/blank", Fixture, NULL, set_up, test_blank, tear_down);
  g_test_add ("/clinic/votes", Fixture, NULL, set_up, test_votes, tear_down);
  g_test_add ("/clinic/wish", Fixture, NULL, set_up, test_wish, tear_down);
  g_test_add_func ("/clinic/no-throw", test_no_throw);
  g_test_add_func ("/clinic/right", test_right);
  g_test_add ("/clinic/verdict", Fixture, NULL, set_up, test_verdict, tear_down);
  g_test_add ("/clinic/throw", Fixture, NULL, set_up, test_throw, tear_down);
  g_test_add ("/clinic/rates", Fixture, NULL, set_up, test_rates, tear_down);
  g_test_add ("/clinic/still", Fixture, NULL, set_up, test_still, tear_down);
  g_test_add_data_func ("/clinic/goes-at-once/study", GUINT_TO_POINTER (0), test_goes_at_once);
  g_test_add_data_func ("/clinic/goes-at-once/lesson", GUINT_TO_POINTER (1), test_goes_at_once);
  g_test_add_func ("/clinic/keys", test_keys);
  g_test_add_func ("/clinic/rooms-screen", test_rooms_screen);
  g_test_add_func ("/clinic/cautions", test_cautions);
  g_test_add_func ("/clinic/tries", test_tries);
  g_test_add ("/clinic/all-talks", Fixture, NULL, set_up, test_all_talks, tear_down);
  status = g_test_run ();
  /* Clinics that went were at work. */
  g_assert_true (tb_task_wait_for_all (LAST_WORK));
  return status;
}
