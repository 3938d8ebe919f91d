#!/bin/sh
# Runs the main job on the samples: demo.sh PROGRAM FOLDER
set -e
program=$1 folder=$2
mkdir -p "$folder"
"$program" quote samples/harbour-planters.job --out "$folder/harbour-planters"
for job in shelf-options rack-bench boathouse-imperial allotment-beds; do
    "$program" quote -q "samples/$job.job" --out "$folder/$job"
done
"$program" compare samples/shelf-options.job > "$folder/shelf-options/compare.txt"
echo
echo "The papers are in:"
for paper in "$folder"/*/*; do
    echo "  $paper"
done
