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

# snmpd is only needed as a program that tests start themselves; the packaged service must not take port 161.
need_snmpd() {
    if [ ! -x /usr/sbin/snmpd ]; then
        install_packages snmpd
        as_root service snmpd stop >/dev/null 2>&1 || true
        if [ -d /run/systemd/system ]; then
            as_root systemctl disable --now snmpd >/dev/null 2>&1 || true
        else
            as_root update-rc.d snmpd disable >/dev/null 2>&1 || true
        fi
    fi
}
