# Starts the built program and stops it again. Needs common.sh, java.sh, build.sh.

service=       # process id of the program while it runs
stop_wanted=false

# Each agent of the invented fleet needs a socket of its own.
raise_file_limit() {
    ulimit -n "$(ulimit -Hn)" 2>/dev/null || true
    if [ "$(id -u)" -eq 0 ]; then ulimit -n 65536 2>/dev/null || true; fi
}

# is_up PORT PATH: whether http://127.0.0.1:PORT/PATH answers 200.
is_up() {
    local status
    status=$( (exec 3<>"/dev/tcp/127.0.0.1/$1" && printf 'GET %s HTTP/1.0\r\nHost: localhost\r\n\r\n' "$2" >&3 &&
        head -n 1 <&3) 2>/dev/null) || return 1
    [[ $status == *' 200 '* ]]
}

# Whether anybody listens on that port of 127.0.0.1.
is_taken() { (exec 3<>"/dev/tcp/127.0.0.1/$1") 2>/dev/null; }

stop_service() {
    stop_wanted=true
    [ -z "$service" ] || kill -TERM "$service" 2>/dev/null || true
}

# Waits for the program's end even when signals come in between; gives its status.
await_service() {
    local status=0
    while kill -0 "$service" 2>/dev/null; do
        wait "$service" && status=0 || status=$?
    done
    service=
    return "$status"
}
