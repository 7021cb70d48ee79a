#!/bin/sh
# What two servers answer beside each other, in turns, where a machine is too busy to compare one run with the next: the same addresses as
# reads.sh, and the processor time of server and database for each answer, which other work disturbs less than it does the number of answers.
#
#   src/bench/reads.sh was run on the first, which keeps its population; the second was started on a copy of its state folder
#   src/bench/reads-beside.sh FOLDER http://127.0.0.1:8080 PID STATE http://127.0.0.1:8081 PID STATE
#
# FOLDER has what RegisterPopulation wrote (token, population, numbers); PID is the server's process, STATE its state folder. Six rounds of
# four seconds; warm both first. Needs wrk.
set -eu
BENCH_FOLDER=${1:?folder of RegisterPopulation}
export BENCH_FOLDER
shift
here=$(dirname "$0")
signed_in="Authorization: Bearer $(cat "$BENCH_FOLDER/token")"
code=$(cat "$BENCH_FOLDER/population")

# ticks of a hundredth of a second: the server's, and those of PostgreSQL with its children, living and gone
server_ticks() { awk '{print $14 + $15}' "/proc/$1/stat"; }
database_ticks() {
    postmaster=$(head -1 "$1/postgresql/data/postmaster.pid")
    ticks=$(awk '{print $16 + $17}' "/proc/$postmaster/stat")
    for backend in $(pgrep -P "$postmaster"); do
        ticks=$((ticks + $(awk '{print $14 + $15}' "/proc/$backend/stat" 2>/dev/null || echo 0)))
    done
    echo "$ticks"
}
load() {
    population="$2/api/v1/populations/$code"
    case $1 in
        node) wrk -t1 -c16 -d4s --timeout 20s "$2/api/v1/node" ;;
        ancestry) wrk -t1 -c16 -d4s --timeout 20s -s "$here/ancestry.lua" "$2" ;;
        animals) wrk -t1 -c16 -d4s --timeout 20s -H "$signed_in" "$population/animals?limit=50" ;;
        pairings) wrk -t1 -c16 -d4s --timeout 20s -H "$signed_in" "$population/pairings?limit=20" ;;
    esac
}
measure() {
    server_before=$(server_ticks "$3")
    database_before=$(database_ticks "$4")
    answered=$(load "$1" "$2")
    server_after=$(server_ticks "$3")
    database_after=$(database_ticks "$4")
    echo "$answered" | awk -v what="$1" -v at="$2" -v server=$((server_after - server_before)) \
        -v database=$((database_after - database_before)) '
        /requests in/ {n = $1}
        /Requests\/sec/ {rate = $2}
        /Non-2xx|other than/ {bad = $0}
        END {if (n == 0) n = 1; printf "%-9s %s %9.1f/s  server %.2f ms  database %.2f ms %s\n", what, at, rate, server * 10 / n, database * 10 / n, bad}'
}
for round in 1 2 3 4 5 6; do
    for what in node ancestry animals pairings; do
        measure "$what" "$1" "$2" "$3"
        measure "$what" "$4" "$5" "$6"
    done
done
