#!/bin/sh
# Takes pages of the samples' papers as pictures: pictures.sh PROGRAM FOLDER. Run from the project's folder. Workbooks are laid out by
# LibreOffice (soffice): without it the pictures stay as they are.
set -eu
program=$1
folder=$2
command -v soffice >/dev/null && command -v pdftoppm >/dev/null || {
    echo "  pictures stay as they are: they take soffice and pdftoppm"
    exit 0
}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT INT TERM
soffice() { command soffice "-env:UserInstallation=file://$work/profile" --headless --convert-to pdf --outdir "$work/$1" "$work/$1/$1-$2.xlsx" >/dev/null 2>&1; }

# The first page of the paper with these words at its head
picture() { # JOB PAPER NAME WORDS
    page=1
    until pdftotext -f "$page" -l "$page" "$work/$1/$1-$2.pdf" - | head -n 2 | grep -qF -- "$4"; do
        page=$((page + 1))
        [ "$page" -le 40 ] || { echo "$1-$2 has no page of $4"; exit 1; }
    done
    pdftoppm -r 80 -f "$page" -l "$page" -x 35 -y 20 -W 591 -H 893 -png -singlefile "$work/$1/$1-$2.pdf" "$folder/$1-$3"
}
for job in harbour-planters allotment-beds; do
    "$program" quote -q "samples/$job.job" --out "$work/$job"
    soffice "$job" estimate
done
soffice harbour-planters order
picture harbour-planters quote quote "Tidewrack Joinery"
picture harbour-planters cuts cuts "Stops"
picture harbour-planters estimate estimate "Rates"
picture harbour-planters order order "Order"
picture allotment-beds quote quote "Tidewrack Joinery"
picture allotment-beds estimate numbers "Numbers of pieces"
