# Shared by the scripts in deploy/. Source it; it sets $root and changes to it.

root=$(cd -- "$(dirname -- "${BASH_SOURCE[0]}")/../.." && pwd)
cd -- "$root"
work=$root/.roundsman

say() { printf '%s  %s\n' "$(date +%H:%M:%S)" "$*"; }

fail() {
    printf '\n%s\n' "$*" >&2
    exit 1
}

as_root() {
    if [ "$(id -u)" -eq 0 ]; then
        "$@"
    elif command -v sudo >/dev/null; then
        sudo "$@"
    else
        fail "This needs root once: $*
Run it as root, or install sudo, and start again."
    fi
}

# Runs something that talks a lot: its output goes to a log that is shown when it fails.
quietly() {
    local log=$1
    shift
    "$@" >"$log" 2>&1 || {
        tail -n 40 "$log" >&2
        fail "Failed: $*
The whole output is in $log."
    }
}
