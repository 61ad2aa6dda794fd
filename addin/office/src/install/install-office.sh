#!/usr/bin/env bash
# Makes sure that the office tests have a LibreOffice with Calc, Java support and a second language.
set -euo pipefail

packages=(libreoffice-calc libreoffice-java-common libreoffice-l10n-de)

complete() {
  local soffice
  soffice=$(command -v soffice) || return 1
  local program
  program=$(dirname "$(readlink -f "$soffice")")
  [[ -e $program/libsclo.so && -e $program/classes/ScriptProviderForJava.jar \
    && -e $program/resource/de/LC_MESSAGES/sc.mo ]]
}

if complete; then
  exit 0
fi
if ! command -v apt-get >/dev/null || [[ $(id -u) -ne 0 ]]; then
  echo "The tests need LibreOffice 7.4 or newer with Calc, Java support and the" \
    "German language pack, and soffice on the PATH. Install it and run them again; on Debian or" \
    "Ubuntu: sudo apt-get install ${packages[*]}" >&2
  exit 1
fi
echo "Installing for the tests, by apt-get: ${packages[*]}"
export DEBIAN_FRONTEND=noninteractive
apt-get update -qq
apt-get install -y -qq --no-install-recommends "${packages[@]}" >/dev/null
complete
