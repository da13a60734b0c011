# Installs what is missing, and nothing else. Debian and Ubuntu. Needs common.sh.

apt_is_fresh=false

has_candidate() { [ -n "$(apt-cache policy "$1" 2>/dev/null | sed -n 's/^  Candidate: \([0-9].*\)/\1/p')" ]; }

refresh_package_lists() {
    if ! $apt_is_fresh; then
        command -v apt-get >/dev/null || fail "There is no apt-get here. Install by hand: $*"
        say "reading the package lists"
        quietly "$work/apt.log" as_root apt-get -o DPkg::Lock::Timeout=300 update
        apt_is_fresh=true
    fi
}

install_packages() {
    refresh_package_lists "$@"
    say "installing $*"
    quietly "$work/apt.log" as_root env DEBIAN_FRONTEND=noninteractive \
        apt-get -o DPkg::Lock::Timeout=300 install -y --no-install-recommends "$@"
}

# need COMMAND PACKAGE: installs the package unless the command is there.
need() { command -v "$1" >/dev/null || install_packages "$2"; }

# Stops a service that came with a package and keeps it from starting: it is only needed as a program of the tests, and
# the packaged snmpd must not take port 161.
keep_stopped() {
    as_root service "$1" stop >/dev/null 2>&1 || true
    if [ -d /run/systemd/system ]; then
        as_root systemctl disable --now "$1" >/dev/null 2>&1 || true
    else
        as_root update-rc.d "$1" disable >/dev/null 2>&1 || true
    fi
}

# need_daemon NAME: a program in /usr/sbin that tests start themselves, from the package of the same name.
need_daemon() {
    if [ ! -x "/usr/sbin/$1" ]; then
        install_packages "$1"
        keep_stopped "$1"
    fi
}
