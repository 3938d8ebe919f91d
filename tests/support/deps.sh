#!/bin/sh
# Checks for the Debian packages named as arguments and installs those that are missing.
if ! command -v dpkg-query >/dev/null 2>&1; then
    echo "deps: not a Debian system; please install these or their equivalents: $*"
    exit 0
fi
missing=
for package in "$@"; do
    dpkg-query -W -f '${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing="$missing $package"
done
[ -z "$missing" ] && exit 0
sudo=
[ "$(id -u)" -eq 0 ] || sudo=sudo
if [ -n "$sudo" ] && ! command -v sudo >/dev/null 2>&1; then
    echo "deps: please install, as root: apt-get install$missing"
    exit 1
fi
echo "deps: installing$missing"
$sudo apt-get update -qq && DEBIAN_FRONTEND=noninteractive $sudo apt-get install -y -qq --no-install-recommends $missing >/dev/null ||
    { echo "deps: could not install; please run: apt-get install$missing"; exit 1; }
