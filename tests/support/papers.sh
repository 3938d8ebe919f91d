#!/bin/sh
# Makes the text papers of the samples anew: papers.sh PROGRAM FOLDER. Run from the project's folder.
set -eu
program=$1
folder=$2
job=harbour-planters
home=$(mktemp -d)
trap 'rm -rf "$home"' EXIT INT TERM
cp -R rates templates "$home/"
mkdir "$home/samples"
cp samples/*.job "$home/samples/"
mkdir -p "$folder"
folder=$(cd "$folder" && pwd)
cd "$home"
for command in quote compare takeoff cut; do
    "$program" $command samples/$job.job > "$folder/$job-$command.txt"
done
"$program" quote samples/allotment-beds.job > "$folder/allotment-beds-quote.txt"
"$program" why samples/$job.job total > "$folder/$job-why-total.txt"
"$program" why samples/$job.job long.short-slat > "$folder/$job-why-part.txt"
cp samples/$job/$job-order.csv "$folder/"
