"""A file is written whole or not at all, and only where an ordinary file may lie."""

import os
import stat

import pytest

from ptmark.files import write_whole


def test_a_pipe_is_not_taken_away(tmp_path):
    # rename(2) takes whatever lies there away: run by root, a device as well
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    with pytest.raises(OSError, match="no ordinary file"):
        write_whole(pipe, b"text")
    assert stat.S_ISFIFO(pipe.stat().st_mode)
    assert list(tmp_path.iterdir()) == [pipe]


def test_the_longest_name_of_the_system_is_written(tmp_path):
    name = "ü" * 125 + ".json"  # 255 bytes, as POSIX NAME_MAX has it on Linux
    write_whole(tmp_path / name, b"text")
    assert (tmp_path / name).read_bytes() == b"text"
    assert len(list(tmp_path.iterdir())) == 1


def test_a_folder_in_the_way_stays(tmp_path):
    with pytest.raises(OSError, match="no ordinary file"):
        write_whole(tmp_path, b"text")
    assert list(tmp_path.iterdir()) == []
