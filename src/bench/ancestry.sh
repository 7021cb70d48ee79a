#!/bin/sh
# How fast a server gives the ancestry of an animal, signed in, beside the cheapest answer that it has (GET /api/v1/node).
#
#   java -Ddemebook.state=FOLDER -Ddemebook.administrator.password=PASSWORD -jar target/quarkus-app/quarkus-run.jar
#   src/bench/ancestry.sh http://127.0.0.1:8080 PASSWORD
#
# Registers a population of 5 000 first (about a minute), then measures each address twice for ten seconds over sixteen
# connections that stay open; the first round warms the server. Needs wrk, curl and a JDK 17.
set -eu
server=${1:?address of the server}
password=${2:?password of the administrator}
BENCH_FOLDER=$(mktemp -d)
export BENCH_FOLDER
trap 'rm -rf "$BENCH_FOLDER"' EXIT
here=$(dirname "$0")

java "$here/RegisterPopulation.java" "$server" "$password" 5000 "$BENCH_FOLDER"
one=$(tail -1 "$BENCH_FOLDER/numbers")
curl -sS -o /dev/null -w 'an answer of five generations has %{size_download} bytes\n' \
    -H "Authorization: Bearer $(cat "$BENCH_FOLDER/token")" \
    "$server/api/v1/populations/$(cat "$BENCH_FOLDER/population")/animals/$one/ancestry?generations=5"
for round in 1 2; do
    echo "── round $round: node"
    wrk -t1 -c16 -d10s --latency "$server/api/v1/node"
    echo "── round $round: ancestry"
    wrk -t1 -c16 -d10s --latency -s "$here/ancestry.lua" "$server"
done
