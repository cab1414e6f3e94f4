"""Charts as MusicXML 4.0 (W3C Music Notation Community Group, 2021), for notation programs."""

from sitegen.engraving.musicxml.document import write_musicxml

__all__ = ["write_musicxml"]
