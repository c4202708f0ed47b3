"""The topics, in the order in which a reader meets them. A new topic is a file here and a line below."""

from __future__ import annotations

from rimbook.site.numbers.topic import Topic
from rimbook.site.numbers.topics import (
    completeness,
    confidence,
    fit,
    friction,
    head,
    length,
    outline,
    parts,
    pressure,
    pull,
    room,
    serves,
    shelf,
    string_way,
    turns,
    twins,
    uncertainty,
    units,
)

GROUPS: tuple[tuple[str, tuple[Topic, ...]], ...] = (
    ("Where things are", (outline.TOPIC, string_way.TOPIC)),
    ("What pulls", (units.TOPIC, pull.TOPIC, friction.TOPIC, pressure.TOPIC, head.TOPIC)),
    ("What fits", (uncertainty.TOPIC, fit.TOPIC, room.TOPIC, length.TOPIC, turns.TOPIC)),
    ("What to take", (twins.TOPIC, serves.TOPIC, parts.TOPIC, shelf.TOPIC)),
    ("What to trust", (completeness.TOPIC, confidence.TOPIC)),
)

TOPICS: tuple[Topic, ...] = tuple(topic for _, topics in GROUPS for topic in topics)
