/* Texts of documents from elsewhere, in every window that shows them: as they are, never as markup, a
 * mnemonic or a format.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <string.h>

#include "tb-clinic-window.h"
#include "tb-export-window.h"
#include "tb-handout-window.h"
#include "tb-lane-window.h"
#include "tb-lesson-window.h"
#include "tb-presenter-window.h"
#include "window-support.h"

/* Markup, an entity, a mnemonic, a format, a turn of direction, letters of both directions, four bytes in
 * one. */
#define FOREIGN "<b>&_%s%n<span foreground=\"red\">\u202eאב 🎳"
#define IN_JSON "<b>&_%s%n<span foreground=\\\"red\\\">\u202eאב 🎳"
/* What a label that shows one of them has in it, whatever it does to it. */
#define MARK "foreground"

/* Of 200 bytes, as long as a name may be. */
static char *
foreign_name (void)
{
  GString *name = g_string_new (FOREIGN);

  while (name->len < TB_NAME_MAX)
    g_string_append_c (name, 'x');
  return g_string_free (name, FALSE);
}

static TbSetup *
foreign_setup (const TbSetup *setup, const char *name)
{
  g_autoptr (TbPattern) pattern = tb_pattern_renamed (setup->pattern, NULL, name);
  g_autoptr (TbSetup) oiled = tb_setup_with_pattern (setup, pattern);
  g_autoptr (TbSetup) thrown = tb_setup_with_bowler (oiled, &setup->shot.delivery, NULL, name);
  TbBall ball = setup->shot.ball;

  return tb_setup_with_ball (thrown, &ball, NULL, name);
}

static TbStudy *
foreign_study (void)
{
  g_autoptr (TbStudy) start = tb_library_start_study ();
  g_autofree char *name = foreign_name ();
  g_autoptr (TbSetup) setup = foreign_setup (start->side[TB_SIDE_BEFORE], name);
  TbShot shot = setup->shot;
  g_autoptr (TbSetup) faster = NULL;

  tb_field_set (tb_field_find (TB_GROUP_DELIVERY, "speed_mph"), &shot.delivery, 19);
  faster = tb_setup_with_shot (setup, &shot);
  return tb_study_new (setup, faster, name, FOREIGN "\n" FOREIGN);
}

static TbLesson *
foreign_lesson (void)
{
  static const char text[]
      = "{\"tenboard\":\"lesson\",\"version\":1,\"id\":\"l\",\"name\":\"" IN_JSON "\",\"note\":\"" IN_JSON
        "\",\"steps\":[{\"name\":\"" IN_JSON "\",\"text\":\"" IN_JSON
        "\",\"after\":{\"delivery.speed_mph\":19},"
        "\"ask\":{\"question\":\"" IN_JSON
        "\",\"measure\":\"board_at_pins\",\"of\":\"difference\",\"choices\":[{\"text\":\"1 " IN_JSON
        "\",\"below\":0},{\"text\":\"2 " IN_JSON
        "\",\"above\":0}]},\"claims\":[{\"measure\":\"board_at_pins\",\"of\":\"after\","
        "\"below\":99}],\"explain\":\"" IN_JSON "\",\"caution\":\"" IN_JSON "\"}]}";
  g_autoptr (GError) error = NULL;
  TbLesson *lesson = tb_lesson_from_text (text, strlen (text), &error);

  g_assert_no_error (error);
  return lesson;
}

/* Labels below a widget that show a foreign text; each must show it as it is. */
static guint
check_labels (GtkWidget *widget)
{
  guint shown = 0;

  if (GTK_IS_LABEL (widget) && strstr (gtk_label_get_text (GTK_LABEL (widget)), MARK) != NULL)
    {
      g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (widget)), FOREIGN));
      g_assert_false (gtk_label_get_use_markup (GTK_LABEL (widget)));
      shown++;
    }
  if (gtk_widget_get_tooltip_text (widget) != NULL
      && strstr (gtk_widget_get_tooltip_text (widget), MARK) != NULL)
    g_assert_nonnull (strstr (gtk_widget_get_tooltip_text (widget), FOREIGN));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    shown += check_labels (child);
  return shown;
}

/* Until the window shows as many as it should; then a few more turns, in which it may warn. */
static void
check_window (gpointer window, guint expected)
{
  guint shown;

  show_window (window);
  WAIT_UNTIL (check_labels (GTK_WIDGET (window)) >= expected);
  for (guint turn = 0; turn < 100; turn++)
    g_main_context_iteration (NULL, FALSE);
  shown = check_labels (GTK_WIDGET (window));
  g_test_message ("%s: %u labels", G_OBJECT_TYPE_NAME (window), shown);
  g_assert_cmpuint (shown, >=, expected);
}

static void
test_main_window (void)
{
  TbWindow *window = tb_window_new (GTK_APPLICATION (application), tb_application_get_library (application));
  g_autoptr (TbStudy) study = foreign_study ();

  tb_session_open (tb_window_get_session (window), study, NULL);
  check_window (window, 4);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The windows that go with it, and the labels each shows at the least; the others draw their texts. */
static void
test_windows_beside_it (void)
{
  TbLibrary *library = tb_application_get_library (application);
  TbWindow *main_window = tb_window_new (GTK_APPLICATION (application), library);
  GtkWindow *parent = GTK_WINDOW (main_window);
  TbSession *session = tb_window_get_session (main_window);
  g_autoptr (TbStudy) study = foreign_study ();
  g_autoptr (TbClinic) clinic = tb_clinic_new (library, study, TB_UNITS_IMPERIAL);
  g_autoptr (TbLesson) lesson = foreign_lesson ();
  TbLessonWindow *lessons = tb_lesson_window_new (parent, session);
  const struct
  {
    gpointer window;
    guint labels;
  } windows[] = {
    { tb_handout_window_new (parent, session), 0 },
    { tb_lane_window_new (parent, session), 0 },
    { tb_export_window_new (parent, session, TB_EXPORT_PICTURE), 0 },
    { tb_clinic_window_new (parent, clinic), 0 },
    { tb_presenter_window_new (parent, clinic), 1 },
    { lessons, 4 },
  };

  tb_session_open (session, study, NULL);
  tb_lesson_window_begin (lessons, lesson);
  for (gsize i = 0; i < G_N_ELEMENTS (windows); i++)
    {
      check_window (windows[i].window, windows[i].labels);
      gtk_window_destroy (GTK_WINDOW (windows[i].window));
    }
  gtk_window_destroy (parent);
}

int
main (int argc, char **argv)
{
  start_tests (&argc, &argv);
  start_application ();
  g_test_add_func ("/foreign-texts/main-window", test_main_window);
  g_test_add_func ("/foreign-texts/windows-beside-it", test_windows_beside_it);
  return run_tests ();
}
