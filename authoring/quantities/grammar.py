"""The shapes a quantity may have, as one regular expression that never backs up over what it has taken."""

from __future__ import annotations

import re

from authoring.quantities.numerals import NUMBER, SIGN, SIGNED

LONGEST = 200
"""The longest text that is read at all; a quantity needs some thirty characters."""

_JOIN = r"(?:\.(?!\.)|[-/](?=[^\W\d_]))"
_POWER = r"(?<=[a-z^])[23](?![0-9.])|(?<=min|in\^)-1(?![0-9.])"
_SIGN = r"[°º˚℃℉\"″”'’′²³⁻^·⋅∙•*‐‑]"
_WORD = rf"(?!to\b)(?>(?:[^\W\d_]|{_SIGN}|{_JOIN}|{_POWER})+)"
UNIT = rf"(?>(?:1/(?=[^\W\d_]))?){_WORD}(?>(?:\s++{_WORD})*)|%"
"""A stretch that may be a unit: words and joints, a single power, a percent sign, never the word "to"."""

_MINUS = "[-\u2212]"

# A unit is looked up, so whatever stands behind may be tried as one: a second copy of UNIT costs 1 ms to compile.
QUANTITY = re.compile(
    rf"""\s*+(?>(?:(?P<least>(?i:at\s++least\b|min(?:imum\b|\.|\b))|>=|≥)|(?P<most>(?i:at\s++most\b|max(?:imum\b|\.|\b))|<=|≤))?)
    \s*+(?>(?P<open>\()?)\s*+(?P<first>{SIGNED})\s*+(?>(?P<unit>{UNIT})?)\s*+
    (?>(?P<tail>
       (?:±|\+/{_MINUS})\s*+(?P<within>{NUMBER})(?>(?P<share>\s*+%)?)
      |(?P<uneven>{SIGN}\s*+{NUMBER}(?>(?:\s*+%)?)\s*+/\s*+{SIGN}\s*+{NUMBER}(?>(?:\s*+%)?))
      |(?:to\b|\.\.\.?+|[…–—])\s*+(?P<last>{SIGNED})
    )?)
    \s*+(?>(?P<close>\))?)\s*+(?>(?P<unit_after>(?:1/)?[^\d\s(](?:.*\S)?)?)\s*+""",
    re.VERBOSE,
)
"""Value, tolerance, range, minimum and maximum; what the parts mean together is for the reader to judge."""

UNEVEN = (
    rf"(?P<sign>{SIGN})\s*+(?P<one>{NUMBER})(?>(?P<one_share>\s*+%)?)\s*+/"
    rf"\s*+(?P<other_sign>{SIGN})\s*+(?P<other>{NUMBER})(?>(?P<other_share>\s*+%)?)"
)
"""A tolerance with a side each: +2/-1; kept as text and compiled at the first one, since few libraries hold any."""
