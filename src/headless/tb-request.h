/* What the command line asks for.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-handout.h"
#include "tb-headless.h"
#include "tb-study-document.h"
#include "tb-throw-view.h"

G_BEGIN_DECLS

/* Errors of the commands; the code is the exit status (TbExit), the message a whole sentence. */
#define TB_HEADLESS_ERROR (tb_headless_error_quark ())
GQuark tb_headless_error_quark (void);

typedef struct TbRequest TbRequest;

/* The line on which changes are judged. */
typedef enum TbLine
{
  TB_LINE_AS_USUAL, /* as the wish has it by itself */
  TB_LINE_SAME,
  TB_LINE_POCKET /* each on its own pocket line */
} TbLine;

/* One thing the program can do. A new one is a row in tb_commands. */
typedef struct TbCommand
{
  const char *option;   /* "--numbers" */
  const char *argument; /* "OUT.png" and the like, for people; NULL if it takes none */
  const char *help;     /* untranslated */
  gboolean (*run) (TbRequest *request, const char *argument, GError **error);
} TbCommand;

/* Ends with a NULL option. */
extern const TbCommand tb_commands[];

/* A command that was asked for. */
typedef struct TbOrder
{
  const TbCommand *command;
  const char *argument;
} TbOrder;

struct TbRequest
{
  GArray *orders;     /* of TbOrder, in the order given */
  GPtrArray *changes; /* of const char *, KEY=VALUE, in the order given */
  const char *path;   /* of the study; NULL for the built-in one */
  TbThrowView view;
  int width, height;        /* px */
  gboolean picture_options; /* --view or --size was given */
  double rate;              /* of time in a clip, 1 is true */
  int fps;                  /* pictures a second in a clip */
  gboolean clip_options;    /* --rate or --fps was given */
  gboolean plain_text;      /* --format text */
  double stretch_ft;        /* 0: as usual */
  TbLine line;
  gboolean study_options;   /* --format, --stretch or --line was given */
  TbPaper paper;
  gboolean handout_options; /* --paper was given */
  TbLibrary *library;       /* once it is needed */
};

/* NULL and TB_EXIT_USAGE if the command line makes no sense. The request borrows from argv. */
TbRequest *tb_request_new (int argc, char **argv, GError **error);
void tb_request_free (TbRequest *request);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbRequest, tb_request_free)

/* Whether an argument is one of the options that tb_request_new() knows. */
gboolean tb_request_knows (const char *argument);
/* The study, read and changed as asked. */
TbStudy *tb_request_study (TbRequest *request, GError **error);
/* The same, thrown: both sides, checked to have run. */
gboolean tb_request_throw (TbRequest *request, TbRun *runs[TB_N_SIDES], GError **error);

/* What the options are, for --help. */
typedef struct TbOption
{
  const char *option;
  const char *argument;
  const char *help; /* untranslated */
} TbOption;
/* Ends with a NULL option. */
extern const TbOption tb_request_options[];

G_END_DECLS
