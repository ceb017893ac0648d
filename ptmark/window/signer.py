"""Who signs: a name and a qualification, in two fields."""

from PySide6.QtWidgets import QFormLayout, QWidget

from ptmark.errors import UsageError
from ptmark.window.bits import CommitEdit
from ptmark.window.words import tr

__all__ = ["SignerFields"]


class SignerFields(QWidget):
    """Two fields; what is proposed gives way to what a person typed."""

    def __init__(self, role: str) -> None:
        super().__init__()
        self._role = role
        form = QFormLayout(self)
        form.setContentsMargins(0, 0, 0, 0)
        self.name, self.qualification = CommitEdit(), CommitEdit()
        self.name.setAccessibleName(tr("Name of the {0}", tr(role)))
        self.qualification.setAccessibleName(tr("Qualification of the {0}", tr(role)))
        self.qualification.setPlaceholderText(tr("scheme, method and level, number"))
        form.addRow(tr("Name"), self.name)
        form.addRow(tr("Qualification"), self.qualification)
        self._proposed = ("", "")

    def propose(self, name: str, qualification: str) -> None:
        """Fill in what is known, where nobody typed anything else."""
        for edit, old, new in zip(
            (self.name, self.qualification), self._proposed, (name, qualification), strict=True
        ):
            if edit.text() == old:
                edit.setText(new)
        self._proposed = (name, qualification)

    def who(self) -> tuple[str, str]:
        """Name and qualification; UsageError where nobody is named."""
        name = self.name.text().strip()
        if not name:
            raise UsageError(
                tr("the {0} is not named", tr(self._role)), mend=tr("type a name first")
            )
        return name, self.qualification.text().strip()
