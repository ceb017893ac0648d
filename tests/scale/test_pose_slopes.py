"""Derivatives of a pose's map against central differences (JCGM 100:2008, 5.1.3 note 2)."""

import numpy as np
import pytest

from ptmark.scale.plane import Pose, rotation_from_vector

STEPS = [1e-6] * 3 + [1e-4] * 3 + [1e-6] + [1e-3] * 2  # rad, mm, log focal length, px


def told(pose):
    return np.append(pose.to_mm().ravel()[:8], np.log(pose.camera_mm[2]))


@pytest.mark.parametrize("turn", [[0.0, 0.0, 0.0], [0.4, -0.2, 0.1], [-0.1, 0.5, 2.0]])
def test_the_map_follows_a_step_as_differences_say(turn):
    turned = rotation_from_vector(np.array(turn))
    pose = Pose(turned, np.array([12.0, -40.0, 260.0]), 3100.0, np.array([2040.0, 1490.0]))
    expected = []
    for step in np.diag(STEPS):
        up, down = told(pose.stepped(step)), told(pose.stepped(-step))
        expected.append((up - down) / (2 * step.max()))
    slopes = pose.to_mm_slopes()
    assert slopes.shape == (9, 9)
    for row, by_differences in zip(slopes, np.array(expected).T, strict=True):
        assert row == pytest.approx(by_differences, abs=1e-7 * np.abs(by_differences).max())
