"""What a page may load and run, said in its head: its own files, and nothing from elsewhere.

The policy (Content Security Policy, level 3, https://www.w3.org/TR/CSP3/) stands in a meta
element, because pages are also opened from a disk, where no server sends headers. Scripts that
stand in the page run only when their hash is in the policy. A trainer's own text is never hashed:
a script that got into it would not run.
"""

from __future__ import annotations

import base64
import hashlib
import re
from collections.abc import Iterator

OWN_TEXT = ("<!--pencilwood-own-->", "<!--/pencilwood-own-->")
"""Around what a page is about; outside of them stands what the site generator adds."""

HEADERS = (
    "Content-Security-Policy: frame-ancestors 'self'; object-src 'none'; base-uri 'none'",
    "X-Content-Type-Options: nosniff",
    "Referrer-Policy: no-referrer",
)
"""What a web host may send beside the pages; the first says what no meta element can."""

_SCRIPT = re.compile(r"<script([^>]*)>(.*?)</script\s*>", re.DOTALL | re.IGNORECASE)
_NOT_INLINE = re.compile(r"""\bsrc=|\btype=["']?application/(ld\+)?json""")
_CHARSET = re.compile(r"<meta charset=[^>]*>")
_RUNS_ANYTHING = "'unsafe-inline'"


def with_policy(html: str, *, live: bool = False, frames: bool = False) -> str:
    """A finished page that names all it may run; nothing may be changed in it afterwards.

    `live` is for a page that is shown while it is written: what serves it puts its own script in.
    `frames` is for a page that opens another page of ours in itself.
    """
    head = _CHARSET.search(html)
    if head is None:
        raise ValueError("a page without a charset has no place for its policy")
    scripts = (_RUNS_ANYTHING,) if live else tuple(dict.fromkeys(_hashes(html)))
    bare = html.replace(OWN_TEXT[0], "").replace(OWN_TEXT[1], "")
    meta = f'<meta http-equiv="Content-Security-Policy" content="{_policy(scripts, frames)}">'
    return f"{bare[: head.end()]}\n{meta}{bare[head.end() :]}"


def _policy(scripts: tuple[str, ...], frames: bool) -> str:
    return "; ".join(
        (
            "default-src 'none'",
            " ".join(("script-src 'self'", *scripts)),
            "style-src 'self'",
            "font-src 'self'",
            # Icons in the styles are data; a photo that a reader picks is a blob.
            "img-src 'self' data: blob:",
            "connect-src 'self'",
            "worker-src 'self'",
            "manifest-src 'self'",
            "frame-src 'self'" if frames else "frame-src 'none'",
            "object-src 'none'",
            "base-uri 'none'",
            "form-action 'none'",
        )
    )


def _hashes(html: str) -> Iterator[str]:
    """The hash of each script that the site generator has put into the page itself."""
    first, last = html.find(OWN_TEXT[0]), html.rfind(OWN_TEXT[1])
    around = html if first < 0 or last < 0 else f"{html[:first]}{html[last:]}"
    for attributes, text in _SCRIPT.findall(around):
        if not _NOT_INLINE.search(attributes):
            digest = hashlib.sha256(text.encode()).digest()
            yield f"'sha256-{base64.b64encode(digest).decode()}'"
