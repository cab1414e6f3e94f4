"""Invented names, words and dates of a synthetic archive."""

from datetime import date, timedelta
from random import Random

_HEADS = "bra cor dun el fen gar hol is jor kel lam mer nor os pel quin ros sel tor ul vel wex yar"
_TAILS = "dane field gate haven lock mere nook oller pike rick shaw stead thorn vick wold yard zel"
_FIRST = "Ada Bero Cale Dory Enna Fitch Greta Hale Iva Joss Kit Lune Mave Nils Orla Pim Quill Rue"
_OBJECTS = (
    "ledger lantern ferry window coat orchard signal drawer kettle harbour platform staircase "
    "almanac ladder compass cellar envelope bridge chimney mirror parcel thimble turnstile wharf"
)
_QUALITIES = (
    "borrowed unposted narrow patient crooked second hollow amber folded slow salted northern "
    "unpaid painted wooden early silent rusted paper distant quiet broken winter idle"
)
_SUNG = (
    "hold the line a- gain and wa- ter on the win- dow leave it o- pen for me now car- ry "
    "the morn- ing down to the har- bour no- bo- dy told you cold hands un- der the ta- ble "
    "count out the rest of it slow- ly all that we bor- rowed is com- ing home late"
)
SYLLABLES = tuple(_SUNG.split())
"""Words to be sung, cut into syllables; a hyphen joins one to the next."""

_FIRST_DAY, _DAYS = date(2012, 1, 2), 5000


def surname(draw: Random) -> str:
    """Return an invented surname or place."""
    return (draw.choice(_HEADS.split()) + draw.choice(_TAILS.split())).capitalize()


def person(draw: Random) -> str:
    """Return an invented person's name."""
    return f"{draw.choice(_FIRST.split())} {surname(draw)}"


def song_title(draw: Random) -> str:
    """Return an invented song's title."""
    quality, thing = draw.choice(_QUALITIES.split()), draw.choice(_OBJECTS.split())
    shape = draw.choice(("The {0} {1}", "{2}’s {1}", "{0} {1}, {2}", "{1} at {2}"))
    return shape.format(quality.capitalize(), thing.capitalize(), surname(draw))


def act(draw: Random) -> str:
    """Return an invented band's name."""
    return f"{surname(draw)} {draw.choice(_OBJECTS.split()).capitalize()}"


def day(draw: Random) -> date:
    """Return a day of publication."""
    return _FIRST_DAY + timedelta(days=draw.randrange(_DAYS))


def slug_of(title: str) -> str:
    """Return a title as an address."""
    letters = "".join(c if c.isalnum() else " " for c in title.lower().replace("’", ""))
    return "-".join(letters.split())
