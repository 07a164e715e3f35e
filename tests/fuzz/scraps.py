"""What hands, editors, spreadsheets and ill will put into a trainer's files."""

from __future__ import annotations

NUMBERS = (
    "0", "-1", "-0", "00012", "1_000", "1e9", "1e-9", "1e999", "NaN", ".nan", "nan", "inf", "-.inf",
    "Infinity", "9" * 9, "9" * 10, "9" * 30, "9" * 10_000, "0." + "3" * 400, "1/0", "0/1", "7/3",
    "0x1F", "0o14", "1:30", "12,5", "12.5.1", "٣", "½", "1 000", "+5", "", " ",
)  # fmt: skip
"""Numbers that are too large, too small, no numbers, or numbers to another program only."""

UNITS = ("mm", "cm", "m", "in", "ft", "km", "MM", "buds", "years", "%", "lb", "°C", "", " mm mm")

LENGTHS = (
    "1 mm", "2 mm", "5 mm", "49 mm", "50 mm", "250 mm", "300 mm", "10 cm", "3 m", "15 m", "1 in",
    "1/16 in", "49 ft", "0 mm", "0.4 mm", "0.5 mm", "-8 mm", "1/0 in", "20 m", "999999999 m",
)  # fmt: skip
"""Lengths at and beyond the bounds of what a vine may measure."""

WORDS = (
    "yes", "no", "null", "~", "true", "false", "on", "2024-01-02", "=", "<<", "*", "&", "!", "|",
    "L1", "L1a", "R60z", "L1m above a", "all canes", "in", "up", "dead", "fine pass", "2 buds",
    "1 to 2", "30 to 24", "en", "es", "../../etc/passwd", "/etc/passwd", "C:\\con", "a/b", "..", ".",
    "%s %d {0} {buds_kept} {x!r} {", "{{ 7*7 }}", "{% for x in y %}", "</script><script>", "<b>",
    "javascript:alert(1)", "http://[", "https://", "&amp;", "\\", "'", '"', "$(id)", "`id`", "--", "-h",
)  # fmt: skip
"""Words that mean something to a parser, a shell, a browser or a file system."""

UNSEEN = (
    "\ufeff", "\u200b", "\u200c", "\u200d", "\u200e", "\u200f", "\u202e", "\u2066", "\u2069", "\u2060",
    "\u00a0", "\u00ad", "\u2028", "\u2029", "\u0085", "\x00", "\x07", "\x08", "\x0b", "\x0c", "\x1b[31m",
    "\x7f", "\ufffe", "\uffff", "\ud800", "\udfff", "\U000e0041", "\U0010ffff", "\u0301" * 50,
)  # fmt: skip
"""Characters that nobody sees, or that no text may hold."""

SEEN = (
    "ñ", "ß", "İ", "ﬁ", "é", "e\u0301", "𝟠", "８", "א", "العربية", "葡萄", "👩🏽‍🌾", "Ω", "\t", "\r", "\r\n",
    "\n", "\n\n", " ", "  ",
)  # fmt: skip
"""Characters that may well be meant."""

MARKS = (
    "&a ", "*a", "*a ", "!x ", "!!int ", "!!binary ", "!!python/object/apply:os.system ", "<<: *a\n",
    "<<: {", "? ", "---\n", "...\n", "%YAML 1.2\n", "%TAG ! x\n", "- ", ": ", "{", "}", "[", "]", "|\n",
    ">-\n", "# ", "@", "`", ", ", ",", ";", '""', '"', "'", "\\u0000", '"\\UFFFFFFFF"', "{{", "}}", "{%",
    "%}", "{#", "#}", "{% raw %}", "```\n", "<!--", "-->", "](", "![", "|", "***", "~~~\n", "    ",
)  # fmt: skip
"""Marks of YAML, CSV, Jinja and Markdown."""

BOMBS = (
    "[" * 3000, "{a: " * 2000, "- " * 3000, "? " * 2000, "((" * 2000, "{{" * 2000, "{%" * 1000,
    "`" * 3000, "*" * 3000, "_a" * 2000, "<" * 3000, "[a](" * 1000, "![" * 2000, "<!--" * 1000,
    "| " * 2000, "> " * 2000, "{#" * 1000, '"' * 3001, "a" * 20_000, "a " * 9000, "&a [" * 500,
    "[a](tools.md#b) " * 2000, "[a]: tools.md#b\n" * 1000, "![](" + "../" * 3000 + "x.png)",
    "\n" * 5000, "# x\n" * 500, "{{ '" + "a" * 3000 + "' }}", "1. " * 1000, "$" * 2000, ":" * 2000,
)  # fmt: skip
"""Much of the same: what a parser may count too often or nest too deep."""

CALLS = (
    '{{ limit("buds per metre") }}', '{{ term("spur", "spurs") }}', "{{ term() }}", "{{ term(term) }}",
    '{{ draw("tidy-vine", state="fine", at="L3", caption="x") }}', '{{ measured("tidy-vine", "x") }}',
    '{{ "a" * 100000000 }}', "{{ 10 ** 10 ** 10 }}", "{{ [0] * 10 ** 9 }}", "{{ 'a' | center(10**9) }}",
    "{{ '%099999999d' | format(1) }}", "{{ '%0999999999d' % 1 }}", "{{ ''.__class__ }}", "{{ self }}",
    "{% for a in 'aaaaaaaaaa' %}{% for b in 'aaaaaaaaaa' %}x{% endfor %}{% endfor %}", "{{ 1/0 }}",
    "{% macro m() %}{{ m() }}{% endmacro %}{{ m() }}", "{% include 'x' %}", "{% import 'x' as y %}",
    "{% set x = 'a' %}{{ x ~ x }}", "{{ 'a'|upper }}", "{{ (1).__class__ }}", "{{ 9" + "9" * 5000 + " }}",
    "{{ " + "(" * 500 + "1" + ")" * 500 + " }}", "{{ " + "-" * 500 + "1 }}", "{{ not " * 50 + "}}",
    "{{ '" + "9" * 3000 + "'|int }}", "{% filter upper %}a{% endfilter %}", "{{ cycler }}", "{{ [1,2][0] }}",
)  # fmt: skip
"""What could be called in a chapter, rightly, wrongly, or to do harm."""

LINKS = (
    "[a](tools.md)", "[a](tools.md#which-tool)", "[a](tools.md#)", "[a](#which-tool)", "[a](#)", "[a]()",
    "[a](tool.md)", "[a](en/tools.md)", "[a](./tools.md)", "[a](x/../tools.md)", "[a](../en/tools.md)",
    "[a](index.md)", "[a](rules/crowded-spurs.md)", "[a](/tools.md)", "[a](//tools.md)", "[a](tools.md?b)",
    "[a](<tools.md>)", "[a](<a b.md>)", '[a](tools.md "b")', "[a](tools.md#%C3%B1)", "[a](%00.md)",
    "[a](%FF%FE.md#%FF)", "[a](%2e%2e/x.md)", "[a](C:\\x.md)", "[a](x:y)", "[a](javascript:alert(1))",
    "[a](data:text/html,x)", "[a][b]", "\n[b]: tools.md#c\n", "\n[b]: <>\n", "\n[^1]: tools.md\n", "[^1]",
    "![a](photos/hand.jpg)", "![a](photos/hands.jpg)", "![](../x.png)", "![a](assets/x.svg)", "![a](#b)",
    "[![a](photos/hand.jpg)](tools.md#b)", "[a](tools.md)[a](tool.md)", "`[a](tool.md)`", "``[a](tool.md)`",
    "[a](" + "x" * 5000 + ".md)", "[a](tools.md#" + "x" * 5000 + ")", "[a](\u202etools.md)", "[a](\x00.md)",
    "\n## Which tool\n", "\n## a {#which-tool}\n", "\n## {{ term(\"spur\") }}\n", '<a id="b"></a>', '<a name="',
)  # fmt: skip
"""Links, pictures and places to link to, as they are typed in a chapter, well or badly."""
