#!/bin/sh
# Makes the font subsets of the papers anew. On Debian: apt-get install fonttools fonts-dejavu-core fonts-dejavu-extra
# Latin with its extensions, Greek, Cyrillic, spaces and dashes, sub- and superscripts, currencies, arrows, mathematics.
set -eu
cd "$(dirname "$0")"
characters="0020-007E,00A0-024F,0259,02BB-02BD,02C6,02C7,02D8-02DD,0300-030C,0323,0327,0328,0331,0370-03FF,0400-052F,\
1E00-1EFF,2000-200B,2010-2015,2018-201F,2020-2022,2026,202F,2030,2032,2033,2039,203A,2044,2060,2070-209C,20A0-20BF,\
2103,2109,2113,2116,2122,2126,212B,2150-215E,2190-2195,21C4,21CC,21D2,21D4,2206,2208,220F,2211,2212,2215,2219,221A,\
221D,221E,222B,2248,2260,2261,2264,2265,226A,226B,22C5,25A0,25A1,25B2,25CB,25CF,26A0,2713,2717,FFFD"
for font in DejaVuSansCondensed DejaVuSansCondensed-Bold DejaVuSerifCondensed-Bold; do
  pyftsubset "${FONTS:-/usr/share/fonts/truetype/dejavu}/$font.ttf" --unicodes="$characters" \
    --layout-features=kern,mark,ccmp --no-hinting --output-file="$font.ttf"
done
