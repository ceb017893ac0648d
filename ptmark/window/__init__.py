"""The Qt window: two thin hands on an `Inspection`.

Never blocks: opening, suggesting and writing run in workers that can be cancelled.
"""
