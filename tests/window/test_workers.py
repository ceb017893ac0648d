"""Workers deliver in the window's thread, tell of faults, and nothing once cancelled."""

import gc
import sys
import threading
import weakref

import pytest
from PySide6.QtCore import QThread

from ptmark.errors import PhotoError
from ptmark.window.workers import Workers


@pytest.fixture
def workers(qtbot):
    made = Workers()
    yield made
    made.shut_down()


def test_work_runs_elsewhere_and_is_delivered_here(qtbot, workers):
    seen = []
    workers.start("", lambda _: QThread.currentThread(), seen.append)
    qtbot.waitUntil(lambda: len(seen) == 1)
    here = []
    workers.start("", lambda _: 0, lambda _: here.append(threading.current_thread()))
    qtbot.waitUntil(lambda: len(here) == 1)
    assert seen[0] is not QThread.currentThread()
    assert here[0] is threading.main_thread()


def test_a_cancelled_worker_delivers_nothing(qtbot, workers):
    begun, go_on, delivered = threading.Event(), threading.Event(), []

    def work(_token):
        begun.set()
        go_on.wait(300)
        return "late"

    workers.start("slow", work, delivered.append, failed=delivered.append, key="slow")
    assert begun.wait(300)
    workers.cancel("slow")
    go_on.set()
    qtbot.waitUntil(lambda: not workers.any_running())
    assert delivered == []


def test_a_token_ends_cancelled_work_at_its_next_look(qtbot, workers):
    begun, go_on, steps = threading.Event(), threading.Event(), []

    def work(token):
        begun.set()
        go_on.wait(300)
        token.check()
        steps.append("went on")

    workers.start("slow", work, key="slow")
    assert begun.wait(300)
    workers.cancel("slow")
    go_on.set()
    qtbot.waitUntil(lambda: not workers.any_running())
    assert steps == []


def test_the_same_key_takes_the_place_of_the_former(qtbot, workers):
    go_on, delivered = threading.Event(), []
    workers.start("a", lambda _: go_on.wait(300) and "old", delivered.append, key="k")
    workers.start("b", lambda _: "new", delivered.append, key="k")
    go_on.set()
    qtbot.waitUntil(lambda: not workers.any_running())
    assert delivered == ["new"]


def test_a_fault_reaches_the_window_with_its_words(qtbot, workers):
    faults = []

    def work(_token):
        raise PhotoError("cut short", where="a.jpg")

    workers.start("", work, failed=faults.append)
    qtbot.waitUntil(lambda: len(faults) == 1)
    assert str(faults[0]) == "a.jpg: cut short"


def test_progress_and_parts_arrive_in_order(qtbot, workers):
    told = []

    def work(token):
        token.partial("half")
        token.progress(0.5)
        return "whole"

    job = workers.start("x", work, told.append, partial=told.append)
    qtbot.waitUntil(lambda: len(told) == 2)
    assert told == ["half", "whole"]
    assert job.share == 0.5


@pytest.mark.skipif(sys.version_info >= (3, 12), reason="True cannot be freed there")
def test_the_installed_qt_binding_gives_back_what_it_borrows(qtbot, workers):
    """PySide6 6.12.0 loses one reference to True at each emit, until the process dies."""
    workers.changed.emit()
    before = sys.getrefcount(True)
    for _ in range(50):
        workers.changed.emit()
    assert sys.getrefcount(True) > before - 25


def test_nothing_runs_once_all_is_shut_down(qtbot):
    # a list's timer may fire after the window, and its threads, are gone
    from shiboken6 import delete

    workers, seen = Workers(), []
    workers.start("", lambda _: 1, seen.append)
    workers.shut_down()
    delete(workers)
    job = workers.start("late", lambda _: 2, seen.append)
    qtbot.wait(50)
    assert job.token.cancelled
    assert 2 not in seen


def test_a_job_that_has_ended_is_gone(qtbot, workers):
    gone = []
    for number in range(20):
        job = workers.start("", lambda _, n=number: n)
        gone.append(weakref.ref(job))
        del job
    qtbot.waitUntil(lambda: not workers.any_running())
    gc.collect()
    assert [one for one in gone if one() is not None] == []
