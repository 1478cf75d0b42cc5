#!/bin/sh
# Installs the browser for the hosted editor on Debian or Ubuntu, when there is none and this user may.
set -eu

if [ -n "${CHROMIUM:-}" ] || command -v chromium >/dev/null || command -v google-chrome-stable >/dev/null; then
  exit 0
fi
if [ "$(id -u)" -ne 0 ] || ! command -v apt-get >/dev/null; then
  echo "There is no Chromium here, and this user can't install it: install the package chromium, or set CHROMIUM." >&2
  exit 1
fi
export DEBIAN_FRONTEND=noninteractive
apt-get update -qq
apt-get install -y -qq --no-install-recommends chromium fonts-dejavu-core >/dev/null
