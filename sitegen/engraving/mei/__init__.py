"""Charts as MEI 5.1 (Music Encoding Initiative), the standard that verovio draws from."""

from sitegen.engraving.mei.document import write_mei

__all__ = ["write_mei"]
