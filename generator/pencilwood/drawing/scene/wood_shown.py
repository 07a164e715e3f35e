"""What a drawing shows of the wood of a vine, in whatever language and on whatever paper."""

from __future__ import annotations

from dataclasses import KW_ONLY, dataclass, field, fields

from pencilwood.drawing.names.labels import LETTER_MM
from pencilwood.drawing.plate import Frame
from pencilwood.drawing.scene.stages import Stages
from pencilwood.drawing.scene.tied_canes import Laid
from pencilwood.drawing.wood.sawn_arm import Sawn
from pencilwood.vine.passes import DoneCut
from pencilwood.vine.wood import Parts


@dataclass(frozen=True)
class WoodShown:
    """A vine in the states that one drawing of it carries."""

    parts: Parts
    stages: Stages = field(default_factory=Stages)
    """The classes that tell what is gone."""
    _: KW_ONLY
    cut_marks: tuple[DoneCut, ...] = ()
    """Cuts that are shown as bars across the wood."""
    laid: tuple[Laid, ...] = ()
    """Canes that are tied along the wire."""
    sawn: Sawn | None = None
    """An arm that comes off at the head."""
    hidden: tuple[str, ...] = ()
    """Classes of what is left out."""
    ghosts: tuple[str, ...] = ()
    """Classes of wood of which the edge alone is drawn."""
    letter_mm: float = LETTER_MM
    """How high the letters beside the wood are."""
    first_names: tuple[str, ...] = ()
    """Places that the text beside it speaks of; a small screen leaves their names out last."""
    phone_mm: float = 0.0
    """How high a small screen shows the names; 0 where it is a whole vine."""
    first_letters: tuple[str, ...] = ()
    """Wood that cuts beside it name; where there is no room for all, others lose their letters."""
    seen: Frame | None = None
    """What paper shows of it, where letters are; None for all of it."""
    lettered: tuple[str, ...] | None = None
    """The wood that the text beside it names by letter; None where all has its letter."""
    cutpoints: bool = False
    """Whether there are places to tap where the wood can be cut."""
    frame_targets: bool = False
    """Whether trunk, head and arms can be tapped by name."""

    @property
    def facts(self) -> tuple[object, ...]:
        """All that the drawing of its wood follows from beside the vine, in plain values."""
        gone = tuple(
            (kind, stage.css_class, stage.left.states)
            for kind, row in (("in order", self.stages.in_order), ("apart", self.stages.apart))
            for stage in row
        )
        own = (one.name for one in fields(self) if one.name not in ("parts", "stages"))
        return (gone, *(getattr(self, name) for name in own))
