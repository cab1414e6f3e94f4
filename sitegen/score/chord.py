"""Chord symbols as values; `sitegen.harmony.read_chord` makes them from text."""

from dataclasses import dataclass, field

from sitegen.score.pitch import PitchName


@dataclass(frozen=True)
class Chord:
    """A chord symbol taken apart.

    `quality` is the canonical suffix ("m7♭5"); `members` are the chord's own notes from the
    root up, and `degrees` names each of them ("R", "♭3", "♭5", "♭7"). `bass` is the root
    unless the symbol has a slash; a foreign bass is no member. `written` is the text the
    symbol was read from and does not take part in equality.
    """

    root: PitchName
    quality: str
    members: tuple[PitchName, ...]
    degrees: tuple[str, ...]
    bass: PitchName
    written: str = field(default="", compare=False)

    def __str__(self) -> str:
        slash = f"/{self.bass}" if self.bass != self.root else ""
        return f"{self.root}{self.quality}{slash}"

    @property
    def pitch_classes(self) -> tuple[int, ...]:
        """The pitch classes that sound, C = 0, sorted, the bass included."""
        return tuple(sorted({name.pitch_class for name in (*self.members, self.bass)}))


@dataclass(frozen=True)
class NoChord:
    """The symbol N.C.: no chord sounds."""

    written: str = field(default="N.C.", compare=False)
    root: None = None
    bass: None = None
    quality: str = ""
    members: tuple[PitchName, ...] = ()
    degrees: tuple[str, ...] = ()
    pitch_classes: tuple[int, ...] = ()

    def __str__(self) -> str:
        return "N.C."
