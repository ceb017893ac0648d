"""ptmark: measure, judge and document colour-contrast penetrant indications from a photo.

The rooms follow the work in one direction: photo, scale, dye, measure, criteria, record,
report. `inspection` holds that flow; `window` and `commands` are two thin hands on it.
"""

__version__ = "0.1.0"
__all__ = ["__version__"]
