# sawbill: settings you may change come first; below the line nothing needs changing.
PREFIX  ?= /usr/local
DESTDIR ?=
BUILD   ?= build
CC      ?= cc
OPTIMISE ?= -O2 -g
WARNINGS = -Wall -Wextra -Wpedantic -Wshadow -Wconversion
WERROR  ?=
SANITIZE ?=
# V=1 shows every command
V       ?=
# Published benchmark sets, one folder a set; `make bench` uses them where they are
SETS    ?= ../shared/bench/1d
SHEETS  ?= ../shared/bench/2d
# make bench: one part only (many, papers, job, growth, workshop, solvers, sheets or the name of a set), the work for each plan in
# steps, how many random jobs, how many of the small ones are given to general solvers too (up to four minutes each)
ONLY    ?=
EFFORT  ?=
JOBS    ?=
MODELS  ?=
# Rooms to build and test, in floor order; name fewer to work on one room: make test ROOMS="text measure"
ROOMS   ?= text measure formula cutting document shop recipe writers takeoff costing papers

# ---- nothing below needs changing ------------------------------------------------------------------

PACKAGES = build-essential pkg-config libxlsxwriter-dev zlib1g-dev libcairo2-dev libpango1.0-dev fonts-dejavu-core libcsv-dev \
           libpcre2-dev libcmocka-dev libjansson-dev uthash-dev coinor-libclp-dev coinor-libcbc-dev libglpk-dev gnumeric unzip \
           poppler-utils
MODULES  = xlsxwriter pangocairo pangoft2 fontconfig libpcre2-8 jansson clp cbc
VERSION  = 0.1.0

override CFLAGS := -std=c11 -D_POSIX_C_SOURCE=200809L $(OPTIMISE) $(WARNINGS) $(WERROR) $(SANITIZE) \
                   -fPIC -fvisibility=hidden -ffp-contract=off $(CFLAGS)
CPPFLAGS_ALL = -Iinclude -Isrc -DSAWBILL_VERSION='"$(VERSION)"' -DSAWBILL_PREFIX='"$(PREFIX)"' -MMD -MP $(CPPFLAGS) \
               $(patsubst -I%,-isystem%,$(shell pkg-config --cflags $(MODULES) 2>/dev/null))
LIBS     = $(shell pkg-config --libs $(MODULES) 2>/dev/null) -lcsv -lm

LIB_SRC  := $(foreach room,$(ROOMS),$(wildcard src/$(room)/*.c))
LIB_OBJ  := $(LIB_SRC:%.c=$(BUILD)/%.o)
MAIN_OBJ := $(patsubst %.c,$(BUILD)/%.o,$(wildcard src/main/*.c))
SUPPORT  := $(patsubst %.c,$(BUILD)/%.o,$(wildcard tests/support/*.c))
TEST_SRC := $(foreach room,$(ROOMS),$(wildcard tests/$(room)/*_test.c))
TESTS    := $(TEST_SRC:%.c=$(BUILD)/%)
BENCH    := $(patsubst %.c,$(BUILD)/%.o,$(wildcard tests/bench/*.c))
SHELL_TESTS := $(sort $(wildcard tests/shell/*_test.sh))

LIB      := $(BUILD)/libsawbill.a
SOLIB    := $(BUILD)/libsawbill.so
PROGRAM  := $(BUILD)/sawbill

Q        = $(if $(V),,@)
SAY      = @$(if $(V),:,echo)

.DELETE_ON_ERROR:
.PHONY: all deps demo papers test test-units test-shell sanitize bench rooms headers lint format install clean
.DEFAULT_GOAL := all
.SECONDARY:

all: $(LIB) $(SOLIB) $(PROGRAM)

$(LIB): $(LIB_OBJ)
	@rm -f $@
	$(SAY) "  ar   $@"
	$(Q)$(AR) rcs $@ $^

$(SOLIB): $(LIB_OBJ)
	$(SAY) "  link $@"
	$(Q)$(CC) $(CFLAGS) -shared -Wl,-soname,$(@F) -o $@ $^ $(LDFLAGS) $(LIBS)

$(PROGRAM): $(MAIN_OBJ) $(LIB)
	$(SAY) "  link $@"
	$(Q)$(CC) $(CFLAGS) -o $@ $^ $(LDFLAGS) $(LIBS)

$(BUILD)/%.o: %.c
	@mkdir -p $(@D)
	$(SAY) "  cc   $<"
	$(Q)$(CC) $(CPPFLAGS_ALL) $(CFLAGS) -c -o $@ $<

$(BUILD)/tests/%_test: $(BUILD)/tests/%_test.o $(SUPPORT) $(LIB)
	$(SAY) "  link $@"
	$(Q)$(CC) $(CFLAGS) -o $@ $^ $(LDFLAGS) $(LIBS) -lcmocka -lglpk

# Debian packages: install what is missing (apt, sudo where needed); elsewhere say what to install.
deps:
	@sh tests/support/deps.sh $(PACKAGES)

demo: deps
	@$(MAKE) --no-print-directory all
	@sh tests/support/demo.sh $(PROGRAM) $(BUILD)/demo

# What stands in samples/papers: texts, which a test compares with fresh ones, and pictures of pages.
papers: all
	@sh tests/support/papers.sh $(abspath $(PROGRAM)) samples/papers
	@sh tests/support/pictures.sh $(abspath $(PROGRAM)) samples/papers

test: deps
	@$(MAKE) --no-print-directory rooms headers test-units test-shell

test-units: $(TESTS)
	@sh tests/support/run-all.sh $(TESTS)

test-shell: all
	@SAWBILL=$(abspath $(PROGRAM)) sh tests/support/run-all.sh $(SHELL_TESTS)

sanitize: deps
	@LSAN_OPTIONS=suppressions=$(CURDIR)/tests/support/leaks.txt:print_suppressions=0 \
	    $(MAKE) --no-print-directory BUILD=$(BUILD)/sanitize OPTIMISE="-O1 -g" \
	    SANITIZE="-fsanitize=address,undefined -fno-sanitize-recover=all" test-units test-shell

bench: $(BUILD)/bench $(PROGRAM)
	SAWBILL=$(PROGRAM) $(BUILD)/bench "$(wildcard $(SETS))" "$(ONLY)" "$(EFFORT)" "$(JOBS)" "$(wildcard $(SHEETS))" "$(MODELS)"

$(BUILD)/bench: $(BENCH) $(SUPPORT) $(LIB)
	$(SAY) "  link $@"
	$(Q)$(CC) $(CFLAGS) -o $@ $^ $(LDFLAGS) $(LIBS) -lglpk

# Who may include whom (the table stands in DEVELOPERS.md), and each header compiles alone.
rooms:
	@sh tests/support/rooms.sh

headers:
	@mkdir -p $(BUILD)
	@for header in include/sawbill/*.h; do \
	    echo "#include \"$${header#include/}\"" | $(CC) -std=c11 $(WARNINGS) -Werror -Iinclude -fsyntax-only -x c - || exit 1; \
	done

lint:
	@sh tests/support/deps.sh cppcheck
	cppcheck --quiet --error-exitcode=1 --std=c11 --enable=warning,portability,performance --inline-suppr \
	    --suppress=missingIncludeSystem -Iinclude -Isrc src

format:
	clang-format -i $$(git ls-files '*.c' '*.h')

install: all
	install -d $(DESTDIR)$(PREFIX)/bin $(DESTDIR)$(PREFIX)/lib $(DESTDIR)$(PREFIX)/include/sawbill \
	    $(DESTDIR)$(PREFIX)/share/sawbill
	install -m 755 $(PROGRAM) $(DESTDIR)$(PREFIX)/bin/
	install -m 644 $(LIB) $(SOLIB) $(DESTDIR)$(PREFIX)/lib/
	install -m 644 include/sawbill/*.h $(DESTDIR)$(PREFIX)/include/sawbill/
	cp -R rates templates samples $(DESTDIR)$(PREFIX)/share/sawbill/

clean:
	rm -rf $(BUILD)

-include $(BENCH:.o=.d) $(SUPPORT:.o=.d) $(LIB_OBJ:.o=.d) $(MAIN_OBJ:.o=.d) $(TESTS:=.d)
