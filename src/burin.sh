#!/bin/sh
# The command `burin`: starts it on the Node.js that `npm ci` brings, wherever it is called from and by whomever.
home=$(dirname "$(dirname "$(readlink -f "$0")")")
node=$home/node_modules/.bin/node
# Where `npm ci` may run no install scripts, it brings none: then the system's own serves, if it is new enough.
[ -x "$node" ] || node=node
# The version is told before anything is loaded. A program would take as long as a start.
major=$("$node" --version 2>/dev/null)
major=${major#v}
major=${major%%.*}
if [ ! -d "$home/node_modules" ] || ! [ "${major:-0}" -ge 24 ] 2>/dev/null; then
  echo "burin: Node.js 24 or its packages are missing; “npm ci” in $home brings both, if its install scripts may run." >&2
  exit 2
fi
exec "$node" "$home/src/main.ts" "$@"
