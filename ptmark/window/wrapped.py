"""Lines of a list or a tree as high as their words need; Qt's own leave the last ones out."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QSize, Qt
from PySide6.QtWidgets import QListView, QStyledItemDelegate, QStyleOptionViewItem, QTreeView

__all__ = ["Wrapped", "wrap"]

_BESIDE = 30  # px beside a line's words, with a bar to scroll by or a sign in front


class Wrapped(QStyledItemDelegate):
    """Gives a line the height that its words need at the width of the view."""

    def __init__(self, view: QListView | QTreeView) -> None:
        super().__init__(view)
        self._view = view

    def sizeHint(  # noqa: N802 - Qt's name
        self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> QSize:
        usual = super().sizeHint(option, index)
        width = self._view.viewport().width() - self._indent(index) - _BESIDE
        words = self._view.fontMetrics().boundingRect(
            0, 0, max(width, 80), 10_000, Qt.TextFlag.TextWordWrap, str(index.data())
        )
        return QSize(width, max(usual.height(), words.height() + 2))

    def _indent(self, index: QModelIndex | QPersistentModelIndex) -> int:
        if isinstance(self._view, QTreeView):
            return (2 if index.parent().isValid() else 1) * self._view.indentation()
        return 2 * self._view.spacing() + 2


def wrap(view: QListView) -> None:
    """Wrap the words of a list, anew where its width becomes another."""
    view.setWordWrap(True)
    view.setResizeMode(QListView.ResizeMode.Adjust)
    view.setItemDelegate(Wrapped(view))
