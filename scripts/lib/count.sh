# shellcheck shell=bash disable=SC2034,SC2154 # shares variables with scripts/test
# How many tests passed and failed, from what the test tools themselves report.

PLAYWRIGHT_REPORT=$LOGS/playwright.json

# Prints "PASSED FAILED".
count_cargo() {
    awk '/^test result:/ {
        for (i = 2; i <= NF; i++) {
            if ($i == "passed;") passed += $(i - 1)
            if ($i == "failed;") failed += $(i - 1)
        }
    } END {print passed + 0, failed + 0}' "$1" 2>/dev/null || say "0 0"
}

# One for each figure, such as the mean interval, whatever the number of series.
count_statistics() {
    awk '/^[0-9]+ passed, [0-9]+ failed$/ {passed = $1; failed = $3} END {print passed + 0, failed + 0}' "$1" 2>/dev/null ||
        say "0 0"
}

count_playwright() {
    node -e '
        const { stats } = JSON.parse(require("node:fs").readFileSync(process.argv[1], "utf8"));
        console.log(stats.expected + stats.flaky, stats.unexpected);
    ' "$1" 2>/dev/null || say "0 0"
}

# count_suite TITLE COUNTER FILE: adds to `passed` and `failed`.
count_suite() {
    local title=$1 counts step broken=0
    counts=$("$2" "$3")
    passed=$((passed + ${counts% *}))
    failed=$((failed + ${counts#* }))
    for step in ${failed_steps[@]+"${failed_steps[@]}"}; do
        case $step in
        "$title") broken=1 ;;
        # Without a build the browser tests never ran.
        "Release build"*) [ "$title" = "Browser tests" ] && broken=1 ;;
        esac
    done
    # A suite that broke off before it could count is no clean sheet.
    if [ "$broken" = 1 ] && [ "${counts#* }" = 0 ]; then
        say "$title did not run to their end; counted as one failure."
        failed=$((failed + 1))
    fi
}
