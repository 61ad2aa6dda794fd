#!/usr/bin/env bash
# Makes sure that the office tests have a LibreOffice with Calc and Java support.
set -euo pipefail

complete() {
  local soffice
  soffice=$(command -v soffice) || return 1
  local program
  program=$(dirname "$(readlink -f "$soffice")")
  [[ -e $program/libsclo.so && -e $program/classes/ScriptProviderForJava.jar ]]
}

if complete; then
  exit 0
fi
if ! command -v apt-get >/dev/null || [[ $(id -u) -ne 0 ]]; then
  echo "The tests of the extension need LibreOffice 7.4 or newer with Calc and Java support, and" \
    "soffice on the PATH. Install it and run them again; on Debian or Ubuntu:" \
    "sudo apt-get install libreoffice-calc libreoffice-java-common" >&2
  exit 1
fi
export DEBIAN_FRONTEND=noninteractive
apt-get update -qq
apt-get install -y -qq --no-install-recommends libreoffice-calc libreoffice-java-common >/dev/null
complete
