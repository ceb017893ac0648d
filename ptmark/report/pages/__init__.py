"""The report's PDF, page by page."""
