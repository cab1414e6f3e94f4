"""A cache gives back what was put there, or nothing; never half of it, never anything else."""

import multiprocessing
import os
import pickle
from fractions import Fraction
from pathlib import Path

import pytest
import zstandard

from sitegen.score.pitch import Pitch, PitchName
from sitegen.site.cache import Cache, default_cache_folder, key_of
from sitegen.site.writing import put_bytes

VALUE = {"length": Fraction(3, 8), "names": frozenset({"E♭"}), "data": b"\x00" * 2000}
KEY = key_of("a value")


@pytest.fixture
def cache(tmp_path: Path) -> Cache:
    return Cache(tmp_path)


def entry(folder: Path) -> Path:
    (path,) = (path for path in folder.glob("made/*/*") if path.is_file())
    return path


def test_gives_back_what_was_put_there(cache: Cache) -> None:
    cache.put(KEY, VALUE)

    assert cache.get(KEY) == VALUE
    assert cache.get(key_of("another")) is None


def test_keeps_values_of_our_own_classes(cache: Cache) -> None:
    cache.put(KEY, [Pitch(PitchName("E", -1), 4)])

    assert cache.get(KEY) == [Pitch(PitchName("E", -1), 4)]


@pytest.mark.parametrize("cut", [0, 1, 10, -1])
def test_half_an_entry_counts_as_none(cache: Cache, tmp_path: Path, cut: int) -> None:
    cache.put(KEY, VALUE)
    path = entry(tmp_path)
    path.write_bytes(path.read_bytes()[:cut])

    assert cache.get(KEY) is None
    cache.put(KEY, VALUE)
    assert cache.get(KEY) == VALUE


def test_every_changed_byte_is_noticed(cache: Cache, tmp_path: Path) -> None:
    cache.put(KEY, VALUE)
    path = entry(tmp_path)
    whole = path.read_bytes()
    for place in range(len(whole)):
        path.write_bytes(whole[:place] + bytes([whole[place] ^ 1]) + whole[place + 1 :])

        assert cache.get(KEY) in (None, VALUE)  # a bit that the format does not use does no harm


class _Planted:
    def __reduce__(self) -> tuple[object, tuple[str]]:
        return os.mkdir, ("planted",)


@pytest.mark.parametrize("what", [_Planted(), put_bytes, os.mkdir])
def test_a_planted_entry_runs_nothing(
    cache: Cache, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, what: object
) -> None:
    monkeypatch.chdir(tmp_path)
    cache.put(KEY, VALUE)
    data = zstandard.ZstdCompressor(write_checksum=True).compress(pickle.dumps(what))
    entry(tmp_path).write_bytes(data)

    assert cache.get(KEY) is None
    assert not Path("planted").exists()


def test_drops_what_was_not_used_for_the_longest_time(tmp_path: Path) -> None:
    cache = Cache(tmp_path, most_bytes=2500)
    for number in range(4):
        cache.put(key_of(number), os.urandom(1000))
        path = tmp_path / "made" / key_of(number)[:2] / key_of(number)[2:]
        os.utime(path, (number, number))
    assert cache.get(key_of(0)) is not None  # which makes it the one used last

    cache.prune()

    assert [cache.get(key_of(number)) is not None for number in range(4)] == [1, 0, 0, 1]


def test_a_cache_that_cannot_be_written_is_none(tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    cache = Cache(tmp_path / "file")

    cache.put(KEY, VALUE)
    cache.prune()

    assert cache.get(KEY) is None


def test_says_that_it_is_a_cache(cache: Cache, tmp_path: Path) -> None:
    cache.put(KEY, VALUE)

    # The signature that https://bford.info/cachedir/ asks for.
    tag = (tmp_path / "CACHEDIR.TAG").read_text(encoding="ascii")
    assert tag.startswith("Signature: 8a477f597d28d172789f06886806bc55")


def test_several_processes_share_it(cache: Cache) -> None:
    spawn = multiprocessing.get_context("spawn")
    with spawn.Pool(2) as pool:
        seen = pool.map(_put_and_get, [cache] * 8)

    assert seen == [True] * 8


def _put_and_get(cache: Cache) -> bool:
    for _ in range(50):
        cache.put(KEY, VALUE)
        if cache.get(KEY) != VALUE:
            return False
    return True


def test_the_usual_folder_is_the_systems(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setattr("sys.platform", "linux")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))

    # The XDG Base Directory Specification's place for what can be made again.
    assert default_cache_folder() == tmp_path / "sitegen"


def test_a_key_tells_values_apart() -> None:
    keys = {key_of(*parts) for parts in [("ab",), ("a", "b"), ("a",), (b"a",), (1,), ("1",), ()]}

    assert len(keys) == 7


def test_a_pipe_among_the_entries_is_not_waited_for(cache: Cache, tmp_path: Path) -> None:
    cache.put(KEY, VALUE)
    path = entry(tmp_path)
    path.unlink()
    os.mkfifo(path)
    os.mkfifo(path.with_name(f".{path.name}.{os.getpid()}"))

    assert cache.get(KEY) is None
    cache.put(KEY, VALUE)
    assert cache.get(KEY) == VALUE


def test_a_cache_tells_why_it_keeps_nothing(cache: Cache, tmp_path: Path) -> None:
    assert cache.find_trouble() == ""
    assert not [path for path in tmp_path.glob("made/*/*") if path.is_file()]

    other = tmp_path / "other"
    other.write_text("a letter", encoding="utf-8")

    assert Cache(other).find_trouble() == "not a directory"
