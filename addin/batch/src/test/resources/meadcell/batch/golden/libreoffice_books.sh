#!/bin/sh
# Has LibreOffice write the workbooks of the other programs anew, in its own way, and in its other
# formats: every second as .ods, every third as .xls.
set -e
cd "$(dirname "$0")"
mkdir -p libreoffice
work=$(mktemp -d)
n=0
for file in openpyxl/*.xlsx xlsxwriter/*.xlsx; do
  n=$((n + 1))
  to=xlsx
  [ $((n % 3)) -eq 1 ] && to=ods
  [ $((n % 3)) -eq 2 ] && to=xls
  mkdir -p "$work/$to"
  cp "$file" "$work/$to/$(dirname "$file")-$(basename "$file")"
done
for to in xlsx ods xls; do
  soffice --headless "-env:UserInstallation=file://$work/profile" --convert-to $to \
    --outdir libreoffice "$work/$to"/*.xlsx >/dev/null
done
rm -r "$work"
