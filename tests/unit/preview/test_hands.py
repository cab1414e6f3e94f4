"""A killed process costs a second try; an ended one leaves at once."""

import asyncio
import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from unit.preview.conftest import PATIENCE, Write
from unit.preview.deadly import DEADLY

from sitegen.preview.desk import Desk
from sitegen.preview.hands import Answer, WorkerHand
from sitegen.preview.jobs import unpack

TIDE = "breakdowns/low-tide/"


@contextmanager
def hand_at(content: Path) -> Iterator[tuple[WorkerHand, Desk]]:
    hand, desk = WorkerHand((DEADLY,), None), Desk(content, None)
    try:
        yield hand, desk
    finally:
        hand.end()
        desk.close()


async def ask(hand: WorkerHand, desk: Desk) -> Answer:
    job = desk.job(TIDE)
    assert job is not None
    return await asyncio.wait_for(hand.do(job), PATIENCE)


def test_a_killed_process_costs_a_second_try(content: Path, write: Write) -> None:
    write("low-tide", f"```claps\nonce {content.parent / 'killed'}\n```\n")
    with hand_at(content) as (hand, desk):
        (made,), bugs = asyncio.run(ask(hand, desk))

    assert (content.parent / "killed").exists()
    assert bugs == []
    assert made.packed is not None
    assert "index.html" in unpack(made.packed)


def test_a_page_that_always_kills_is_told_and_the_next_is_made(
    content: Path, write: Write
) -> None:
    write("low-tide", "```claps\nalways\n```\n")
    with hand_at(content) as (hand, desk):
        nothing, bugs = asyncio.run(ask(hand, desk))
        write("low-tide", "Words.")
        (made,), none = asyncio.run(ask(hand, desk))

    assert nothing == ()
    assert "ended from outside" in bugs[0].doing
    assert none == []
    assert made.is_good


def test_an_ended_hand_leaves_whatever_it_does(content: Path, write: Write) -> None:
    pipe = content.parent / "begun"
    os.mkfifo(pipe)
    write("low-tide", f"```claps\nforever {pipe}\n```\n")

    async def end_it(hand: WorkerHand, desk: Desk) -> Answer:
        asking = asyncio.create_task(ask(hand, desk))
        await asyncio.to_thread(pipe.read_bytes)
        hand.end()
        return await asking

    with hand_at(content) as (hand, desk):
        nothing, bugs = asyncio.run(end_it(hand, desk))

    assert nothing == ()
    assert len(bugs) == 1
