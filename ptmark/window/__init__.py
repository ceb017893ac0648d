"""The Qt window: beside the command line the other thin hand on an `Inspection`.

Never blocks: opening, suggesting and writing run in workers that can be cancelled.
"""
