# shellcheck shell=bash
# Shared by every script: where things are, how a step is shown, how a run is stopped.

ROOT=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
TOOLS=$ROOT/.tools
LOGS=$TOOLS/logs
HEARTBEAT_SECONDS=30
TAIL_LINES=${TAIL_LINES:-${CI:+80}}
TAIL_LINES=${TAIL_LINES:-25}

mkdir -p "$LOGS"
cd "$ROOT"

say() { printf '%s\n' "$*"; }

# Ends the run with what went wrong and what to do about it.
die() {
    printf '\nStopped: %s\n' "$1" >&2
    [ -z "${2:-}" ] || printf 'Way out: %s\n' "$2" >&2
    exit 1
}

have() { command -v "$1" >/dev/null 2>&1; }

clock() { printf '%d min %02d s' "$(($1 / 60))" "$(($1 % 60))"; }

# Runs a command with a time limit where the machine has `timeout`.
limited() {
    local seconds=$1
    shift
    if have timeout; then timeout -k 5 "$seconds" "$@"; else "$@"; fi
}

# --- one run at a time -----------------------------------------------------

lock() {
    have flock || return 0
    exec 9>"$TOOLS/lock"
    flock -n 9 && return 0
    say "Another run of these scripts is at work here. Waiting for it to end (Ctrl-C to give up)."
    flock 9
}

unlock() {
    have flock || return 0
    exec 9>&-
}

# --- steps -----------------------------------------------------------------

STEP_NUMBER=0
STEP_TOTAL=0
STEP_STATUS=0
STEP_PID=
STEP_LOG=

# The steps of a run are listed first, so that each can say how many there are.
STEP_NAMES=()
STEP_TITLES=()
STEP_USUAL=()

# plan NAME TITLE USUAL: NAME is the function that does the work; a function
# `NAME_done`, if there is one, says that nothing is left to do.
plan() {
    STEP_NAMES+=("$1")
    STEP_TITLES+=("$2")
    STEP_USUAL+=("$3")
    STEP_TOTAL=${#STEP_NAMES[@]}
}

stop_step() {
    [ -n "$STEP_PID" ] || return 0
    # A step has a process group of its own; everything it started goes with it.
    kill -TERM -- "-$STEP_PID" 2>/dev/null || true
    wait "$STEP_PID" 2>/dev/null || true
    STEP_PID=
}

interrupted() {
    trap '' INT TERM
    stop_step
    printf '\nInterrupted. Nothing half-made is kept in use; run the same command again to go on.\n' >&2
    exit 130
}

trap interrupted INT TERM
trap stop_step EXIT

# Runs step number $1 and leaves its status in STEP_STATUS. To be called on its
# own: after `if` or before `||`, bash would go on after errors inside the step.
run_step() {
    local index=$1 name title usual started now last status=0
    STEP_STATUS=0
    name=${STEP_NAMES[$index]} title=${STEP_TITLES[$index]} usual=${STEP_USUAL[$index]}
    STEP_NUMBER=$((index + 1))
    STEP_LOG=$LOGS/$name.log

    if declare -F "${name}_done" >/dev/null && "${name}_done" >/dev/null 2>&1; then
        say "[$STEP_NUMBER/$STEP_TOTAL] $title: already there"
        return 0
    fi

    say "[$STEP_NUMBER/$STEP_TOTAL] $title (usually about $usual)"
    started=$SECONDS last=$SECONDS
    # Job control gives the step its own process group; without it, it would also ignore Ctrl-C.
    set -m
    (
        trap - INT TERM EXIT
        set -euo pipefail
        "$name"
    ) >"$STEP_LOG" 2>&1 </dev/null 9>&- &
    STEP_PID=$!
    set +m
    while kill -0 "$STEP_PID" 2>/dev/null; do
        sleep 0.5
        now=$SECONDS
        if ((now - last >= HEARTBEAT_SECONDS)); then
            last=$now
            say "      still at work after $(clock $((now - started))), log: ${STEP_LOG#"$ROOT"/}"
        fi
    done
    wait "$STEP_PID" || status=$?
    STEP_PID=
    printf '%s\t%s\n' "$name" "$((SECONDS - started))" >>"$LOGS/times.tsv"

    if [ "$status" = 0 ]; then
        say "      done in $(clock $((SECONDS - started)))"
    else
        say "      FAILED after $(clock $((SECONDS - started))): $title. The log ends with:"
        tail -n "$TAIL_LINES" "$STEP_LOG" | sed 's/^/      | /'
        say "      whole log: ${STEP_LOG#"$ROOT"/}"
    fi
    STEP_STATUS=$status
}

# What to try when a step fails, by step name.
way_out() {
    case $1 in
    setup_wasm_std) say "with rustup: 'rustup target add wasm32-unknown-unknown'; on Debian run this once as root. Then start again" ;;
    setup_trunk | setup_wasm_bindgen) say "see that crates can be downloaded and 2 GB of disk are free, then start again: what was built so far is reused" ;;
    setup_npm) say "see that npm packages can be downloaded, then start again" ;;
    setup_python) say "see that Python packages can be downloaded, or set PENLIGHT_PYTHON to a Python $PYTHONS with venv, then start again" ;;
    setup_chromium) say "install Chromium or Chrome yourself, or set PENLIGHT_CHROMIUM to its path, then start again" ;;
    setup_webkit) say "only Debian's WebKit is known to Penlight; start again without --webkit" ;;
    build_release) say "mend what the log names. If it speaks of crates it can't find: remove target/wasm32-unknown-unknown and start again" ;;
    *) say "mend what the log names and start again" ;;
    esac
}

# Runs the first $1 of the planned steps; the first failure ends the run.
run_steps() {
    local index
    for ((index = 0; index < $1; index++)); do
        run_step "$index"
        [ "$STEP_STATUS" = 0 ] ||
            die "step '${STEP_TITLES[$index]}' failed." "$(way_out "${STEP_NAMES[$index]}")"
    done
}
