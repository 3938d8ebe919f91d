# Installed somewhere else, the program finds its rates and templates, and a stranger's program can use the library.
. tests/shell/lib.sh
build=$(dirname "$SAWBILL")
status 0 make -s install BUILD="$build" DESTDIR="$work/root" PREFIX=/opt/trade
bin=$work/root/opt/trade/bin/sawbill
[ -x "$bin" ] || fail "no program"
status 0 "$bin" start "$work/shop"
status 0 "$bin" quote "$work/shop/jobs/first.job"
cat > "$work/user.c" <<'C'
#include <sawbill/measure.h>
#include <stdio.h>
int main(void) {
    sb_run run = sb_run_new();
    puts(sb_write_length_unit(&run, SB_MM(864), NULL));
    sb_run_free(&run);
    return 0;
}
C
case "$build" in
    *sanitize*) ;; # a plain program cannot load a sanitized library
    *)
        cc -std=c11 -I"$work/root/opt/trade/include" -o "$work/user" "$work/user.c" -L"$work/root/opt/trade/lib" -lsawbill || fail "cannot link"
        LD_LIBRARY_PATH=$work/root/opt/trade/lib status 0 "$work/user"
        says "864 mm"
        nm -D --defined-only "$work/root/opt/trade/lib/libsawbill.so" | grep ' T ' | grep -v ' sb_' && fail "the library shows names that are not its own"
        ;;
esac
finish
