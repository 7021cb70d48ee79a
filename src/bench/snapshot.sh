#!/bin/sh
# How long a population takes from PostgreSQL to a pedigree with inbreeding and mean kinship, and how long one more entry.
#
#   java -Ddemebook.state=FOLDER -Ddemebook.administrator.password=PASSWORD \
#     '-Dquarkus.log.category."org.demebook.ancestry".level=DEBUG' -jar target/quarkus-app/quarkus-run.jar > LOG
#   src/bench/snapshot.sh http://127.0.0.1:8080 PASSWORD LOG [ANIMALS]
#
# Registers a population first (5 000 animals take about a minute). Then states a parentage anew forty times, each of which
# has all read anew, and describes an animal anew forty times, each of which is carried on. Needs curl and a JDK 17.
set -eu
server=${1:?address of the server}
password=${2:?password of the administrator}
log=${3:?what the server prints}
animals=${4:-5000}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT

java "$(dirname "$0")/RegisterPopulation.java" "$server" "$password" "$animals" "$folder"
population="$server/api/v1/populations/$(cat "$folder/population")"
signed_in="Authorization: Bearer $(cat "$folder/token")"
last=$(tail -1 "$folder/numbers")

ask() { curl -sf -o /dev/null -H "$signed_in" "$population/gene-pool"; }
change() {
    etag=$(curl -sf -D - -o /dev/null -H "$signed_in" "$population/animals/$last" | tr -d '\r' | sed -n 's/^[Ee][Tt]ag: //p')
    curl -sf -o /dev/null -X PUT -H "$signed_in" -H 'Content-Type: application/json' -H "If-Match: $etag" \
        -d "$2" "$population/animals/$last/$1"
}
median() { sort -n | awk '{ v[NR] = $1 } END { print v[int((NR + 1) / 2)], "ms, median of", NR }'; }

ask
before=$(wc -l < "$log")
parentage=$(curl -sf -H "$signed_in" "$population/animals/$last" | sed -n 's/.*"dam":"\([^"]*\)".*/{"dam":"\1","sire":{"kind":"unknown"}}/p')
i=0
while [ $i -lt 40 ]; do
    change parentage "$parentage"; ask
    change sex '{"sex":"unknown"}'; ask
    i=$((i + 1))
done
printf 'read anew: '
tail -n "+$before" "$log" | sed -n 's/.*read .* in \([0-9.]*\) ms.*/\1/p' | median
printf 'carried on: '
tail -n "+$before" "$log" | grep 'carried on to Optional\[' | sed -n 's/.* in \([0-9.]*\) ms.*/\1/p' | median
