/* main/command.h -- the command line: options as data, one file per command. */
#ifndef SAWBILL_MAIN_COMMAND_H
#define SAWBILL_MAIN_COMMAND_H

#include "sawbill/papers.h"
#include "sawbill/writers.h"

/* What the user asked for. Strings point into argv. */
typedef struct sb_options {
    bool json, quiet, material_only, butt, outside, labels, batches, help;
    const char *out, *units, *parts, *stock, *kerf, *trim, *option, *width, *length, *measured, *drawings;
    double seconds;
    SB_LIST(const char *) sets;
    SB_LIST(const char *) words; /* what is not an option: jobs, files, figures */
} sb_options;

enum {
    STATUS_DONE = 0,
    STATUS_WRONG_INPUT = 1,
    STATUS_WRONG_USE = 2,
    STATUS_LOOK = 3,
    STATUS_SYSTEM = 4
};

typedef struct sb_command {
    const char *name;
    const char *form;    /* "JOB [options]" */
    const char *summary; /* one line */
    const char *example; /* a command that works as printed, anywhere; in my-shop/ once that is started */
    const char *takes;   /* the options it takes, by name, blank-separated */
    size_t least_words, most_words;
    int (*run)(sb_run *run, const sb_options *options);
} sb_command;

int command_quote(sb_run *run, const sb_options *options);
int command_takeoff(sb_run *run, const sb_options *options);
int command_cut(sb_run *run, const sb_options *options);
int command_compare(sb_run *run, const sb_options *options);
int command_why(sb_run *run, const sb_options *options);
int command_angle(sb_run *run, const sb_options *options);
int command_check(sb_run *run, const sb_options *options);
int command_start(sb_run *run, const sb_options *options);

extern const sb_command commands[];
extern const size_t command_count;

/* ---- options ---------------------------------------------------------------------------------- */

/* Fills `options` from the words behind the command's name. False after a line on standard error. */
bool options_read(sb_run *run, const sb_command *command, int count, char **words, sb_options *options);
/* A length given to an option, told at "--NAME" when it is none or below nothing; bare numbers are mm. */
bool option_length(sb_run *run, const char *name, const char *text, sb_length *out);
void options_help(const sb_command *command); /* prints the command's help */
void commands_help(void);
/* A line on standard error about wrong use; returns STATUS_WRONG_USE. */
int wrong_use(const char *format, ...) __attribute__((format(printf, 1, 2)));

/* ---- what commands share ---------------------------------------------------------------------------- */

/* A job opened with all it needs. */
typedef struct sb_desk {
    const sb_job *job;
    sb_shop *shop;
    sb_recipe_book *book;
    const char *templates; /* the folder of recipes and wording */
    const char *base;      /* the job file's base name, without .job */
    const char *folder;    /* where its papers go */
} sb_desk;

/* Finds the shop above the job file and reads its rates and the job, each as far as it goes. False after errors. */
bool desk_open(sb_run *run, const sb_options *options, const char *job_path, sb_desk *desk);
/* The words of the customer's paper in the shop's language; NULL after errors. */
const sb_wording *desk_wording(sb_run *run, const sb_desk *desk);
bool desk_comma(const sb_desk *desk); /* whether the shop writes a decimal comma */
/* The shop's rates folder `name` (NULL or "": the default set) in the shop folder `home`. */
sb_shop *desk_shop(sb_run *run, const sb_options *options, const char *home, const char *name);
sb_tune desk_tune(sb_run *run, const sb_options *options, const sb_desk *desk); /* limits of the search */
/* Opens the first word as a job and works every option of it, or the one of --option alone, through to the price.
 * NULL after errors. */
const sb_ways *desk_ways(sb_run *run, const sb_options *options, sb_desk *desk);

const char *path_join(sb_run *run, const char *folder, const char *name);
const char *path_base(sb_run *run, const char *path, const char *ending); /* name without folder and ending */
bool path_exists(const char *path);
bool path_is_folder(const char *path);
const char *path_folder(sb_run *run, const char *path);                   /* "." when there is none */

/* Whether standard output could not be written; a pipe that its reader has closed is no failure. */
bool output_failed(void);
/* Prints to standard output; a failed write is a failure of the run. */
void show(sb_run *run, const char *text);
void show_document(sb_run *run, const sb_options *options, const sb_document *document);
void show_record(sb_run *run, const sb_record *record);
/* Writes the document as NAME.xlsx into the set. */
bool file_xlsx(sb_run *run, sb_file_set *files, const char *name, const sb_document *document);
/* Each drawing of the document as NAME-DRAWING.svg or .png. */
bool file_drawings(sb_run *run, sb_file_set *files, const char *name, const sb_document *document, const char *format);
/* With --out: the document as NAME.xlsx in that folder. False after a failure. */
bool out_xlsx(sb_run *run, const sb_options *options, const char *name, const sb_document *document);
/* Writes the document as NAME.pdf into the set. */
bool file_pdf(sb_run *run, sb_file_set *files, const char *name, const sb_document *document);
bool file_csv(sb_run *run, sb_file_set *files, const char *name, const sb_document *document);

/* Set by the signal handler: the search stops with the best plan so far. */
const volatile int *stop_flag(void);
bool stop_was_asked(void);
/* Hears Ctrl-C and, on a terminal, tells on standard error how far long work is; nothing with --quiet. Money has so many
 * digits. */
const sb_watch *watch_new(sb_run *run, const sb_options *options, int digits);

#endif
