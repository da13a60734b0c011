# How deploy/check runs a part of the build and what it shows of it, and how it finds processes that tests left running.
# Needs common.sh.

declare -A part_pid part_shown

# Starts Maven for one part of the check: begin NAME ARGUMENT...
begin() {
    local name=$1 log=$work/check-$1.log
    shift
    : >"$log" # there before anybody reads it: the build in the background may be slow to open it
    # A session of its own, so that a Ctrl-C is handled here and nowhere else.
    setsid env "$mark" "$mvn" -B "$@" >"$log" 2>&1 </dev/null &
    part_pid[$name]=$!
    show_tests_until_end "${part_pid[$name]}" "$log" &
    part_shown[$name]=$!
}

# Waits for the end of a part, and gives its status.
finish() {
    local status
    wait "${part_pid[$1]}" && status=0 || status=$?
    wait "${part_shown[$1]}" || true
    return "$status"
}

# Prints each finished test class while the build runs.
show_tests_until_end() {
    local shown=0 lines
    while :; do
        local running=true
        kill -0 "$1" 2>/dev/null || running=false
        lines=$(wc -l <"$2")
        if [ "$lines" -gt "$shown" ]; then
            sed -n "$((shown + 1)),${lines}p" "$2" | sed 's/\x1b\[[0-9;]*m//g' |
                sed -n 's/^\[[A-Z]*\]  *\(Tests run: .*\) -- in \(.*\)/          \2  \1/p; s/^\[INFO\] --- \([^ ]*\).*/          \1/p'
            shown=$lines
        fi
        $running || break
        sleep 1
    done
}

# Sums up the reports of both test runs.
report_counts() {
    local -a reports=()
    # an engine that fails as a whole leaves a report with blanks in its name
    while IFS= read -r -d '' file; do reports+=("$file"); done \
        < <(find target/surefire-reports target/failsafe-reports -name 'TEST-*.xml' -print0 2>/dev/null)
    if [ "${#reports[@]}" -eq 0 ]; then
        say "no test has run"
        return
    fi
    grep -h -m 1 '<testsuite ' "${reports[@]}" | awk '
        function number(name) { return match($0, " " name "=\"[0-9]+") ? substr($0, RSTART + length(name) + 3, RLENGTH - length(name) - 3) : 0 }
        /<testsuite / { classes++; tests += number("tests"); failures += number("failures"); errors += number("errors"); skipped += number("skipped") }
        END { printf "          %d tests in %d classes: %d failed, %d broke, %d skipped\n", tests, classes, failures, errors, skipped }'
}

# Test classes in the sources of which there is no report, one per line: no part may lose any.
classes_without_report() {
    local file name
    find src/test/java \( -name '*Test.java' -o -name '*IT.java' \) | sort | while read -r file; do
        name=${file#src/test/java/}
        name=${name%.java}
        name=${name//\//.}
        [ -f "target/surefire-reports/TEST-$name.xml" ] || [ -f "target/failsafe-reports/TEST-$name.xml" ] || echo "$name"
    done
}

# The failing tests with the first lines of what they said, or else what the builds complained about.
show_failures() {
    local failing
    failing=$(grep -h -A 12 -E '<<< (FAILURE|ERROR)!$' target/surefire-reports/*.txt target/failsafe-reports/*.txt 2>/dev/null |
        grep -v '^Tests run:') || true
    printf '\n%s\n' "${failing:-$(grep -h -E '^\[ERROR\]' "$work"/check-*.log | head -n 40)}" >&2
}

# Processes that bear the mark of this run, one per line.
marked() {
    local folder
    for folder in /proc/[0-9]*; do
        if tr '\0' '\n' <"$folder/environ" 2>/dev/null | grep -qxF "$mark"; then
            printf '%s %s\n' "${folder#/proc/}" "$(tr '\0' ' ' <"$folder/cmdline" | cut -c 1-120)"
        fi
    done 2>/dev/null
}

# Ends what is left of this run: asks first, then insists.
end_marked() {
    local signal pids
    for signal in INT TERM KILL; do
        pids=$(marked | cut -d ' ' -f 1)
        [ -n "$pids" ] || return 0
        # shellcheck disable=SC2086
        kill "-$signal" $pids 2>/dev/null || true
        sleep 3
    done
}
