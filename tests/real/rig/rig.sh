#!/usr/bin/env bash
# A mail house on loopback for the tests: Dovecot (IMAP, IMAPS, LMTP, sign-in, sieve) and Postfix (SMTP,
# submission, SMTPS), run as root from Debian's packages, without systemd and away from the machine's own mail.
#
#   rig.sh install                        the packages, where they are missing
#   rig.sh start DIR BASE                 ports BASE+25 SMTP, +87 submission, +65 SMTPS, +43 IMAP, +93 IMAPS;
#                                         BASE+80 is where sign-in tokens are asked about (oauth.ts)
#   rig.sh stop DIR
#   rig.sh kill9-imap DIR | start-imap DIR | stop-smtp DIR | start-smtp DIR
#   rig.sh uidvalidity DIR USER FOLDER VALUE
set -euo pipefail
ulimit -n 4096 # Postfix closes every descriptor it could have when it starts: a huge limit costs seconds

command=${1:?} dir=${2:-}
packages=(dovecot-core dovecot-imapd dovecot-lmtpd dovecot-sieve postfix openssl)

install() {
  exec 9>/var/lock/burin-rig
  flock 9 # two suites may start at once
  dpkg-query -W "${packages[@]}" >/dev/null 2>&1 && return
  local policy=/usr/sbin/policy-rc.d made=
  # the packages' own services stay down
  [ -e $policy ] || { made=1; printf '#!/bin/sh\nexit 101\n' >$policy; chmod +x $policy; }
  apt-get update -qq || true
  DEBIAN_FRONTEND=noninteractive apt-get install -qq -y --no-install-recommends "${packages[@]}" || failed=$?
  [ -z "$made" ] || rm $policy
  return "${failed:-0}"
}

wait_for_port() {
  for _ in $(seq 1500); do
    (exec 3<>"/dev/tcp/127.0.0.1/$1") 2>/dev/null && return
    sleep 0.02
  done
  echo "port $1 did not open" >&2
  return 1
}

# An authority of our own, a certificate for localhost, and one for a name that is not ours.
certificates() {
  local key=(-newkey ec -pkeyopt ec_paramgen_curve:prime256v1 -nodes)
  openssl req -x509 "${key[@]}" -days 30 -subj /CN=Rig -keyout "$dir/tls/ca-key.pem" -out "$dir/tls/ca.pem"
  for name in "localhost DNS:localhost,IP:127.0.0.1" "elsewhere DNS:elsewhere.example"; do
    set -- $name
    openssl req "${key[@]}" -subj "/CN=$1" -keyout "$dir/tls/$1-key.pem" -out "$dir/tls/$1.csr"
    openssl x509 -req -in "$dir/tls/$1.csr" -days 30 -CA "$dir/tls/ca.pem" -CAkey "$dir/tls/ca-key.pem" \
      -CAcreateserial -extfile <(echo "subjectAltName=$2") -out "$dir/tls/$1.pem"
  done
}

# Every address's password is its local part and "-plainly".
users() {
  local address
  for address in orders@quillgate.example service@quillgate.example witness@quillgate.example \
    bounces@quillgate.example alice@brightwire.example bob@fernhill.example dana@oakmoor.example \
    orders@larchgate.example; do
    echo "$address:{PLAIN}${address%@*}-plainly:$(id -u nobody):$(id -g nobody)::$dir/mail/${address#*@}/${address%@*}::"
  done
}

dovecot_conf() {
  cat <<E
base_dir = $dir/run
state_dir = $dir/state
log_path = $dir/log/dovecot.log
listen = 127.0.0.1
protocols = imap lmtp
default_internal_user = dovecot
default_login_user = dovenull
first_valid_uid = 1
mail_uid = nobody
mail_gid = nogroup
mail_location = maildir:~/Maildir
auth_mechanisms = plain login xoauth2 oauthbearer
auth_failure_delay = 0
disable_plaintext_auth = no
ssl = yes
ssl_cert = <$dir/tls/localhost.pem
ssl_key = <$dir/tls/localhost-key.pem
mail_max_userip_connections = 50
submission_host = 127.0.0.1:$((base + 25))
passdb {
  driver = oauth2
  mechanisms = xoauth2 oauthbearer
  args = $dir/oauth2.conf
}
passdb {
  driver = passwd-file
  mechanisms = plain login
  args = scheme=PLAIN username_format=%u $dir/users
}
userdb {
  driver = passwd-file
  args = username_format=%u $dir/users
}
namespace inbox {
  inbox = yes
  separator = /
  mailbox Sent {
    auto = subscribe
    special_use = \Sent
  }
}
service imap-login {
  chroot =
  process_min_avail = 1
  service_count = 0
  inet_listener imap {
    port = $((base + 43))
  }
  inet_listener imaps {
    port = $((base + 93))
    ssl = yes
  }
}
service anvil {
  chroot =
  # no waiting after a sign-in that failed
  unix_listener anvil-auth-penalty {
    mode = 0
  }
}
service lmtp {
  unix_listener lmtp {
    mode = 0666
  }
}
service auth {
  unix_listener auth-client {
    mode = 0666
  }
}
service stats {
  unix_listener stats-writer {
    mode = 0666
  }
}
protocol lmtp {
  postmaster_address = postmaster@quillgate.example
  mail_plugins = sieve
}
plugin {
  sieve = ~/answer.sieve
}
E
}

oauth_conf() {
  cat <<E
introspection_mode = post
introspection_url = http://127.0.0.1:$((base + 80))/introspect
username_attribute = username
active_attribute = active
active_value = true
E
}

postfix_main() {
  cat <<E
compatibility_level = 3.6
queue_directory = $dir/queue
data_directory = $dir/data
command_directory = /usr/sbin
daemon_directory = /usr/lib/postfix/sbin
mail_owner = postfix
setgid_group = postdrop
maillog_file = $dir/log/postfix.log
maillog_file_prefixes = $dir
myhostname = mx.quillgate.example
mydestination =
mynetworks =
inet_interfaces = 127.0.0.1
inet_protocols = ipv4
alias_maps =
alias_database =
local_recipient_maps =
virtual_mailbox_domains = quillgate.example brightwire.example fernhill.example oakmoor.example larchgate.example fault.example
virtual_alias_domains = lists.example regexp:$dir/postfix/buyers
virtual_alias_maps = texthash:$dir/postfix/lists regexp:$dir/postfix/buyers
virtual_transport = lmtp:unix:$dir/run/lmtp
lmtp_destination_recipient_limit = 1
default_transport = error:5.1.2 nobody lives there
smtpd_tls_cert_file = $dir/tls/localhost.pem
smtpd_tls_key_file = $dir/tls/localhost-key.pem
smtpd_tls_security_level = may
smtpd_sasl_type = dovecot
smtpd_sasl_path = $dir/run/auth-client
smtpd_relay_restrictions = permit_sasl_authenticated, reject_unauth_destination
smtpd_recipient_restrictions = check_recipient_access texthash:$dir/postfix/faults, permit_sasl_authenticated, reject_unauth_destination
smtpd_sender_restrictions = check_sender_access texthash:$dir/postfix/proofs
smtpd_error_sleep_time = 0
message_size_limit = 60000000
mailbox_size_limit = 0
virtual_mailbox_limit = 0
in_flow_delay = 0
queue_run_delay = 5s
minimal_backoff_time = 2s
maximal_backoff_time = 10s
enable_long_queue_ids = yes
disable_dns_lookups = yes
smtp_host_lookup = native
E
}

postfix_master() {
  cat <<E
127.0.0.1:$((base + 25)) inet n - n - - smtpd
127.0.0.1:$((base + 87)) inet n - n - - smtpd
  -o syslog_name=postfix/submission -o smtpd_tls_security_level=encrypt -o smtpd_sasl_auth_enable=yes
  -o smtpd_client_restrictions=permit_sasl_authenticated,reject
127.0.0.1:$((base + 65)) inet n - n - - smtpd
  -o syslog_name=postfix/smtps -o smtpd_tls_wrappermode=yes -o smtpd_sasl_auth_enable=yes
  -o smtpd_client_restrictions=permit_sasl_authenticated,reject
pickup unix n - n 60 1 pickup
cleanup unix n - n - 0 cleanup
qmgr unix n - n 5 1 qmgr
rewrite unix - - n - - trivial-rewrite
bounce unix - - n - 0 bounce
defer unix - - n - 0 bounce
trace unix - - n - 0 bounce
verify unix - - n - 1 verify
flush unix n - n 1000? 0 flush
proxymap unix - - n - - proxymap
smtp unix - - n - - smtp
relay unix - - n - - smtp
showq unix n - n - - showq
error unix - - n - - error
retry unix - - n - - error
discard unix - - n - - discard
lmtp unix - - n - - lmtp
anvil unix - - n - 1 anvil
scache unix - - n - 1 scache
tlsmgr unix - - n 1000? 1 tlsmgr
postlog unix-dgram n - n - 1 postlogd
E
}

faults() {
  cat <<E
temp@fault.example   451 4.3.0 try again later
grey@fault.example   450 4.2.0 not yet
full@fault.example   452 4.2.2 mailbox full
gone@fault.example   550 5.1.1 no such person
shut@fault.example   421 4.3.2 closing
E
}

# What a server that looks into senders would have found out, by the sender in the envelope.
proofs() {
  local field="PREPEND Authentication-Results: mx.quillgate.example;"
  cat <<E
proved@brightwire.example $field dmarc=pass header.from=brightwire.example
refuted@brightwire.example $field dmarc=fail header.from=brightwire.example
proved@fernhill.example $field dmarc=pass header.from=fernhill.example
E
}

write_everything() {
  mkdir -p "$dir"/{run,state,mail,log,postfix,queue,data,tls}
  certificates 2>/dev/null
  users >"$dir/users"
  dovecot_conf >"$dir/dovecot.conf"
  oauth_conf >"$dir/oauth2.conf"
  postfix_main >"$dir/postfix/main.cf"
  postfix_master >"$dir/postfix/master.cf"
  faults >"$dir/postfix/faults"
  proofs >"$dir/postfix/proofs"
  echo "everyone@lists.example alice@brightwire.example, orders@quillgate.example" >"$dir/postfix/lists"
  # any number of companies, whose letters all come to one mailbox
  echo '/(^|@)buyer[0-9]+\.example$/ alice@brightwire.example' >"$dir/postfix/buyers"
  chmod 755 "$dir" # the daemons give up root
  chown nobody:nogroup "$dir/mail"
  chown postfix:root "$dir/data"
  touch -d '-1 minute' "$dir"/postfix/* # Postfix waits two seconds for a freshly written main.cf to settle
  echo "$base" >"$dir/base"
}

# The daemons' input and output go elsewhere, or whoever reads this script's output waits for ever.
start_imap() {
  base=$(<"$dir/base")
  dovecot -c "$dir/dovecot.conf" </dev/null >>"$dir/log/start.log" 2>&1 || {
    tail -n 20 "$dir/log/start.log" >&2
    return 1
  }
  wait_for_port $((base + 43))
  wait_for_port $((base + 93))
}

start_smtp() {
  base=$(<"$dir/base")
  [ -d "$dir/queue/maildrop" ] || postfix -c "$dir/postfix" check </dev/null >>"$dir/log/start.log" 2>&1
  /usr/lib/postfix/sbin/master -c "$dir/postfix" -w </dev/null >>"$dir/log/start.log" 2>&1
  wait_for_port $((base + 25))
  wait_for_port $((base + 87))
}

gone() { # a zombie counts as gone
  for _ in $(seq 250); do
    grep -qs '^State:.[^Z]' "/proc/$1/status" || return 0
    sleep 0.02
  done
}

stop_smtp() {
  local pid
  pid=$(tr -d ' ' <"$dir/queue/pid/master.pid" 2>/dev/null) || return 0
  tr '\0' ' ' <"/proc/$pid/cmdline" 2>/dev/null | grep -q -- "-c $dir/postfix" || return 0
  kill -TERM "$pid"
  gone "$pid"
}

kill9_imap() {
  local master pids
  master=$(cat "$dir/run/master.pid" 2>/dev/null) || return 0
  kill -STOP "$master" 2>/dev/null || return 0 # a child started meanwhile would keep the ports
  pids=$(pgrep -P "$master" || true)
  # shellcheck disable=SC2086
  kill -9 "$master" $pids 2>/dev/null || true
  local pid
  for pid in $master $pids; do gone "$pid"; done
  rm -f "$dir/run/master.pid"
}

case $command in
  install) install ;;
  start) base=${3:?}; write_everything; start_imap; start_smtp ;;
  stop) stop_smtp; kill9_imap ;; # Dovecot's own way down takes two seconds, and nothing is kept
  kill9-imap) kill9_imap ;;
  start-imap) start_imap ;;
  stop-smtp) stop_smtp ;;
  start-smtp) start_smtp ;;
  uidvalidity) doveadm -c "$dir/dovecot.conf" mailbox update -u "${3:?}" --uid-validity "${5:?}" "${4:?}" ;;
  *) echo "no such command: $command" >&2; exit 2 ;;
esac
