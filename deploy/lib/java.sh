# Finds Java 17 or later, and sets $java. Needs common.sh.

least_java=17

# The major version of a java program, or 0.
java_version() {
    local line
    line=$("$1" -version 2>&1 | grep -m 1 ' version "') || { echo 0; return; }
    line=${line#*\"}
    line=${line#1.}
    echo "${line%%[!0-9]*}"
}

# find_java PROGRAM: the first home of a new enough Java that has this program (java, or javac for building).
find_java() {
    local home
    for home in "${JAVA_HOME:-}" "$(dirname -- "$(dirname -- "$(readlink -f "$(command -v "$1" || echo /none/bin/none)")")")" \
        /usr/lib/jvm/*; do
        if [ -x "$home/bin/$1" ] && [ -x "$home/bin/java" ] && [ "$(java_version "$home/bin/java")" -ge "$least_java" ]; then
            JAVA_HOME=$home
            java=$home/bin/java
            export JAVA_HOME
            return 0
        fi
    done
    return 1
}

# A JDK to build with; installs one where there is none. Needs packages.sh.
need_jdk() {
    find_java javac && return
    refresh_package_lists
    if has_candidate openjdk-17-jdk-headless; then
        install_packages openjdk-17-jdk-headless
    else
        install_packages default-jdk-headless
    fi
    find_java javac || fail "Java $least_java or later is needed; the package brought $(java_version "$(command -v java)").
Install a newer JDK and set JAVA_HOME to it."
}

# A Java to run with, without installing anything.
require_java() {
    find_java java || fail "Roundsman needs Java $least_java or later. Found: $(command -v java >/dev/null &&
        java -version 2>&1 | head -n 1 || echo none). Install it, or set JAVA_HOME to it."
}
