"""Fields of the sums about work: renovation, the crew, shoot thinning."""

from __future__ import annotations

from pencilwood.block.field import Field
from pencilwood.block.renovation import WAYS

WORK_FIELDS = (
    # Renovation
    Field("way", "way", choices=WAYS, default="every-other-vine"),
    Field("vines", "vines", "vines", "1", "1000000", ranged=False),
    Field("rows", "rows", "rows", "1", "10000", ranged=False),
    Field(
        "recovery_first", "first year", "share", "0 %", "100 %", default="0 %", status="published"
    ),
    Field(
        "recovery_second",
        "second year",
        "share",
        "0 %",
        "100 %",
        default="30 to 70 %",
        status="assumption",
    ),
    Field(
        "recovery_third",
        "third year",
        "share",
        "0 %",
        "100 %",
        default="60 to 100 %",
        status="assumption",
    ),
    Field(
        "wait_years",
        "years between",
        "years",
        "1",
        "10",
        default="2",
        ranged=False,
        status="assumption",
    ),
    Field(
        "share_a_year",
        "share a year",
        "share",
        "1 %",
        "100 %",
        default="34 %",
        ranged=False,
        status="from memory",
    ),
    Field(
        "renewal_seconds",
        "renewal time",
        "minutes",
        "1 s",
        "7200 s",
        default="5 min",
        status="assumption",
    ),
    Field("price_per_g", "price", "price", "0.001 /kg", "1000 /kg"),
    Field("pay_per_s", "pay", "pay", "0.01 /h", "1000 /h"),
    # Crew
    Field(
        "seconds_per_vine",
        "time per vine",
        "seconds",
        "1 s",
        "7200 s",
        default="54 to 63 s",
        status="published",
    ),
    Field(
        "day_s",
        "working day",
        "hours",
        "1 h",
        "16 h",
        default="8 h",
        ranged=False,
        status="assumption",
    ),
    Field("people", "people", "people", "1", "10000", ranged=False),
    Field("days", "days", "days", "1", "366", ranged=False),
    Field("hand_seconds_after", "time after machine", "seconds", "1 s", "7200 s"),
    Field("machine_s", "machine time", "hours", "0.1 h", "10000 h"),
    Field("machine_pay_per_s", "machine pay", "pay", "0.01 /h", "10000 /h"),
    # Shoot thinning
    Field("large_wounds", "large wounds", "wounds", "0", "50", default="0", status="assumption"),
    Field(
        "shoots_per_wound",
        "shoots per wound",
        "number",
        "0",
        "20",
        default="2",
        status="assumption",
    ),
    Field("canopy_mm", "canopy length", "canopy", "0.1 m", "20 m"),
    Field(
        "target_shoots_per_mm",
        "target shoots",
        "on-length",
        "1 /m",
        "60 /m",
        default="10 to 16 /m",
        status="published",
    ),
)
