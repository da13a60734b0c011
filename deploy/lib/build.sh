# Builds the program when its sources changed. Needs common.sh, packages.sh, java.sh.

maven_version=3.9.11
program=$work/program
mvn=

maven_is_enough() {
    local version
    version=$("$1" -v 2>/dev/null | sed 's/\x1b\[[0-9;]*m//g' | sed -n 's/^Apache Maven \([0-9.]*\).*/\1/p')
    [ -n "$version" ] && [ "$(printf '3.9.0\n%s\n' "$version" | sort -V | head -n 1)" = 3.9.0 ]
}

# Sets $mvn to a Maven of at least 3.9; an older one is good enough to fetch it.
need_maven() {
    local tools=$work/tools
    local own=$tools/apache-maven-$maven_version/bin/mvn
    if command -v mvn >/dev/null && maven_is_enough mvn; then
        mvn=mvn
        return
    fi
    if [ ! -x "$own" ]; then
        need mvn maven
        if maven_is_enough mvn; then
            mvn=mvn
            return
        fi
        say "fetching Maven $maven_version"
        rm -rf "$tools/new"
        mkdir -p "$tools/new"
        # outside the project: an old Maven refuses its build plugins
        (cd "$tools/new" && quietly "$work/maven.log" mvn -B \
            org.apache.maven.plugins:maven-dependency-plugin:3.8.1:unpack \
            -Dartifact="org.apache.maven:apache-maven:$maven_version:zip:bin" -DoutputDirectory="$tools/new")
        chmod +x "$tools/new/apache-maven-$maven_version/bin/mvn"
        rm -rf "$tools/apache-maven-$maven_version"
        mv "$tools/new/apache-maven-$maven_version" "$tools/"
        rm -rf "$tools/new"
    fi
    mvn=$own
}

fingerprint() {
    find src/main db pom.xml -type f -printf '%p %s %T@\n' | LC_ALL=C sort | sha256sum
}

# Leaves the built program in $program: a copy, so that a later build does not pull files from under a running one.
build_program() {
    local sources
    sources=$(fingerprint)
    if [ -f "$program/sources" ] && [ "$(cat "$program/sources")" = "$sources" ]; then
        say "the program is built already"
        return
    fi
    need_jdk
    need_maven
    say "building the program (the first time, its libraries are fetched: several minutes)"
    quietly "$work/build.log" "$mvn" -B -q -DskipTests package
    rm -rf "$program.new" "$program.old"
    cp -R target/quarkus-app "$program.new"
    printf '%s\n' "$sources" >"$program.new/sources"
    if [ -d "$program" ]; then mv "$program" "$program.old"; fi
    mv "$program.new" "$program"
    rm -rf "$program.old"
}
