#!/bin/sh
# How fast a server answers what is read most, signed in, beside the cheapest answer that it has (GET /api/v1/node).
#
#   java -Ddemebook.state=FOLDER -Ddemebook.administrator.password=PASSWORD -jar target/quarkus-app/quarkus-run.jar
#   src/bench/reads.sh http://127.0.0.1:8080 PASSWORD
#
# Registers a population of 5 000 first (about a minute), then measures each address three times for eight seconds over
# sixteen connections that stay open; the first round warms the server. Needs wrk, curl and a JDK 17.
set -eu
server=${1:?address of the server}
password=${2:?password of the administrator}
BENCH_FOLDER=$(mktemp -d)
export BENCH_FOLDER
trap 'rm -rf "$BENCH_FOLDER"' EXIT
here=$(dirname "$0")

java "$here/RegisterPopulation.java" "$server" "$password" 5000 "$BENCH_FOLDER"
population="$server/api/v1/populations/$(cat "$BENCH_FOLDER/population")"
signed_in="Authorization: Bearer $(cat "$BENCH_FOLDER/token")"
for round in 1 2 3; do
    for what in node ancestry animals pairings; do
        printf '%s %-9s' "$round" "$what"
        case $what in
            node) wrk -t1 -c16 -d8s "$server/api/v1/node" ;;
            ancestry) wrk -t1 -c16 -d8s -s "$here/ancestry.lua" "$server" ;;
            animals) wrk -t1 -c16 -d8s -H "$signed_in" "$population/animals?limit=50" ;;
            pairings) wrk -t1 -c16 -d8s -H "$signed_in" "$population/pairings?limit=20" ;;
        esac | grep -E 'Requests/sec|other than|Non-2xx'
    done
done
