"""Every field of every sum, with what is usual and how well that is known."""

from __future__ import annotations

from collections.abc import Mapping

from pencilwood.block.crop_load import CROP_LOAD_BANDS, VIGOUR_BANDS
from pencilwood.block.field import Field
from pencilwood.block.winter import FAMILIES
from pencilwood.block.work_fields import WORK_FIELDS

_VINE_FIELDS = (
    # Bud load
    Field("prunings_g", "prunings", "vine-weight", "10 g", "50 kg"),
    Field("formula", "formula", default="20+20", status="from memory"),
    Field(
        "below_one_lb",
        "below one pound",
        choices=("hold", "scale"),
        default="hold",
        status="assumption",
    ),
    Field("least_buds", "fewest buds", "buds", "1", "500", ranged=False, status="published"),
    Field("most_buds", "most buds", "buds", "1", "500", ranged=False, status="published"),
    Field(
        "buds_per_g",
        "buds for weight",
        "buds-on-weight",
        "1 /kg",
        "200 /kg",
        default="30 to 40 /kg",
        status="from memory",
    ),
    Field("target_crop_g_per_m2", "target crop", "crop-on-area", "0.1 t/ha", "100 t/ha"),
    Field("wanted_buds", "buds wanted", "buds", "1", "500"),
    Field("dead_share", "dead buds", "share", "0 %", "100 %"),
    Field(
        "winter_rule", "winter rule", choices=tuple(FAMILIES), default="full", status="from memory"
    ),
    # The block
    Field("row_mm", "row spacing", "spacing", "0.5 m", "10 m", ranged=False),
    Field("vine_mm", "vine spacing", "spacing", "0.3 m", "10 m", ranged=False),
    Field(
        "missing_share", "missing vines", "share", "0 %", "90 %", default="0 %", status="assumption"
    ),
    Field("area_m2", "area", "area", "0.001 ha", "10000 ha", ranged=False),
    Field("arms", "arms", "arms", "1", "4", default="2", ranged=False),
    Field("arm_mm", "arm length", "arm", "10 cm", "500 cm"),
    Field(
        "spur_spacing_mm",
        "spur spacing",
        "spur-spacing",
        "2 cm",
        "60 cm",
        default="10 cm",
        status="from memory",
    ),
    Field("buds_per_spur", "buds per spur", "number", "1", "6", default="2", status="published"),
    # Crop
    Field("buds", "buds", "buds", "1", "500"),
    Field(
        "shoots_per_bud",
        "shoots per bud",
        "number",
        "0.05",
        "4",
        default="0.75",
        status="published",
    ),
    Field(
        "clusters_per_shoot",
        "clusters per shoot",
        "number",
        "0",
        "6",
        default="1.9",
        status="published",
    ),
    Field("cluster_g", "cluster weight", "cluster-weight", "5 g", "3000 g"),
    Field("crop_g", "crop", "vine-weight", "10 g", "200 kg"),
    Field(
        "crop_load_band",
        "crop load band",
        choices=tuple(CROP_LOAD_BANDS),
        default="single-canopy",
        status="published",
    ),
    Field("shoots_per_mm", "shoots", "on-length", "1 /m", "60 /m"),
    Field("cane_g", "cane weight", "small-weight", "1 g", "500 g"),
    Field(
        "vigour_band",
        "vigour band",
        choices=tuple(VIGOUR_BANDS),
        default="single-canopy-kd",
        status="published",
    ),
    # Leaves
    Field("trimming_mm", "trimming height", "short", "50 cm", "400 cm"),
    Field("arm_height_mm", "arm height", "short", "10 cm", "250 cm"),
    Field("climb_mm", "climb", "short", "0 cm", "200 cm", default="5 cm", status="assumption"),
    Field("shoot_mm", "shoot length", "short", "10 cm", "400 cm"),
    Field("nodes", "nodes", "nodes", "2", "100"),
    Field("leaves_per_shoot", "leaves", "number", "1", "100"),
    Field(
        "leaf_mm2",
        "leaf size",
        "leaf-size",
        "10 cm2",
        "500 cm2",
        default="95 cm2",
        status="published",
    ),
    Field(
        "leaf_mm2_per_g",
        "leaf for fruit",
        "leaf-on-weight",
        "0.1 m2/kg",
        "5 m2/kg",
        default="0.8 to 1.2 m2/kg",
        status="published",
    ),
    Field("fruit_g", "fruit", "small-weight", "1 g", "5000 g"),
)

_FIELDS = (*_VINE_FIELDS, *WORK_FIELDS)
FIELDS: Mapping[str, Field] = {field.name: field for field in _FIELDS}
FIELD_BY_KEY: Mapping[str, Field] = {field.key: field for field in _FIELDS}
