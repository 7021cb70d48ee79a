#!/bin/sh
# How long the server works on each page of a population of 5 000 animals, beside the cheapest answer that it has
# (GET /api/v1/node), for a keeper who holds all of them.
#
#   java -Ddemebook.state=FOLDER -Ddemebook.administrator.password=PASSWORD -jar target/quarkus-app/quarkus-run.jar
#   src/bench/pages.sh http://127.0.0.1:8080 PASSWORD [FOLDER]
#
# Registers the population first (about a minute), unless FOLDER has one of a run before. Then follows links from the page of
# today, one page of each shape, and asks for each of them forty times over one connection; the first twenty warm the server.
# Prints the median and the slowest of the other twenty in milliseconds, and the size of the page. Needs curl and a JDK 17.
set -eu
server=${1:?address of the server}
password=${2:?password of the administrator}
BENCH_FOLDER=${3:-$(mktemp -d)}
here=$(dirname "$0")
[ -s "$BENCH_FOLDER/token" ] || java "$here/RegisterPopulation.java" "$server" "$password" 5000 "$BENCH_FOLDER"
signed_in="Authorization: Bearer $(cat "$BENCH_FOLDER/token")"
first="/populations/$(cat "$BENCH_FOLDER/population")/today"

# one page of each shape: numbers and ids are what pages of one shape differ in
shape() { sed -E 's/[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/ID/g; s/B[0-9A-Z]+-H-[0-9]+-(%2A|[0-9A-Z*])/NUMBER/g; s/after=[^&]*/after=/; s/[0-9]+/N/g'; }
seen="$BENCH_FOLDER/shapes"
: > "$seen"
waiting="$BENCH_FOLDER/waiting"
echo "$first" > "$waiting"
asked=0
while [ "$asked" -lt "$(wc -l < "$waiting")" ] && [ "$asked" -lt 120 ]; do
    asked=$((asked + 1))
    page=$(sed -n "${asked}p" "$waiting")
    curl -s -H "$signed_in" -H 'Accept: text/html' "$server$page" > "$BENCH_FOLDER/page"
    grep -oE 'href="/populations/[^"#]*"' "$BENCH_FOLDER/page" | sed -E 's/^href="//; s/"$//; s/&amp;/\&/g' | while read -r link; do
        kind=$(echo "$link" | shape)
        case $link in *.pdf | *.csv | *.zip | *.html | *export*) continue ;; esac
        if ! grep -qxF "$kind" "$seen"; then
            echo "$kind" >> "$seen"
            echo "$link" >> "$waiting"
        fi
    done
done

timed() { # timed ADDRESS: milliseconds until the first byte, one a line
    config="$BENCH_FOLDER/config"
    : > "$config"
    for _ in $(seq 40); do printf 'url = "%s"\noutput = "/dev/null"\n' "$server$1" >> "$config"; done
    curl -s -g -H "$signed_in" -H 'Accept: text/html, application/json;q=0.5' -w '%{http_code} %{time_starttransfer} %{size_download}\n' -K "$config" |
        tail -20
}
printf '%9s %9s %9s  %s\n' 'median ms' 'slowest' bytes page
for page in /api/v1/node $(cat "$waiting"); do
    timed "$page" | sort -k2 -n | awk -v page="$page" '
        { status = $1; ms[NR] = $2 * 1000; size = $3 }
        END { printf "%9.1f %9.1f %9d  %s%s\n", ms[int((NR + 1) / 2)], ms[NR], size, page, status == 200 ? "" : " (" status ")" }'
done
