"""Takes markup out of words that others wrote; a finding says where, so that nothing just vanishes.

Every page shows words as words already. This is the second lock: what came in a folder from
somebody else holds no tag and no coded character even before a page is made of it.
"""

from __future__ import annotations

import html
from dataclasses import replace

import nh3

from pencilwood.cases.report import Report, quoted
from pencilwood.cases.yaml_nodes import ListNode, MapNode, Node, TextNode

_MOST_LAYERS = 8
"""Markup within coded markup, and so on; nobody codes an honest word this often."""


def without_markup(node: Node, report: Report) -> Node:
    """The same content with every value as plain text; a warning for each that was changed."""
    if isinstance(node, TextNode):
        words = plain_text(node.text)
        if words == node.text:
            return node
        report.warn(node.place, "shared-markup", found=quoted(node.text))
        return replace(node, text=words)
    if isinstance(node, ListNode):
        return replace(node, items=tuple(without_markup(item, report) for item in node.items))
    if isinstance(node, MapNode):
        pairs = ((name, without_markup(value, report)) for name, value in node.pairs)
        return replace(node, pairs=tuple(pairs))
    return node


def plain_text(text: str) -> str:
    """The words that a browser would show of this text, were it HTML, and nothing hidden in them.

    A sign such as the one in "5 < 6" begins no tag and stays.
    """
    for _ in range(_MOST_LAYERS):
        # The library gives the words coded for HTML; what comes of them may be markup again.
        words = html.unescape(nh3.clean(text, tags=set()))
        if words == text:
            return text
        text = words
    return text.translate({ord(sign): None for sign in "<>&"})
