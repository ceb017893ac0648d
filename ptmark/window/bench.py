"""One tool at a time on the photo: started here, ended here, with its hint."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, QPointF, Signal

from ptmark.errors import PtmarkError
from ptmark.window.indications.hands import Hands
from ptmark.window.session import Session
from ptmark.window.tools.edit import EditTool
from ptmark.window.tools.points import AreaTool, LineTool, PickTool
from ptmark.window.tools.tool import Tool
from ptmark.window.tools.trace import TraceTool
from ptmark.window.view.live_size import LiveSize
from ptmark.window.view.photo_view import PhotoView
from ptmark.window.words import tr

__all__ = ["Bench"]


class Bench(QObject):
    """Starts and ends tools.

    Signals: ``hint(str)`` what to do now, "" where no tool is at work; ``switched(str)`` the
    name of the tool at work; ``picked(str, object)`` the kind of a scale reference and its
    points, None as long as some are missing.
    """

    hint = Signal(str)
    switched = Signal(str)
    picked = Signal(str, object)

    def __init__(self, session: Session, view: PhotoView, hands: Hands) -> None:
        super().__init__(session)
        self._session, self._view, self._hands = session, view, hands
        self.name = ""
        self.live = LiveSize(session)
        session.step_changed.connect(lambda _: self.stop())
        session.changed.connect(self._follow)

    @property
    def px_per_screen(self) -> float:
        """Photo px for each screen px, as the photo is shown now."""
        return 1.0 / self._view.port.scale

    def stop(self) -> None:
        """Put the tool away; the pointer selects and pans again."""
        tool = self._view.tool
        if tool is not None:
            self._view.set_tool(None)
            self.live.watch(None)
            self._session.workers.cancel("ways")
            tool.deleteLater()
            self.name = ""
            self.hint.emit("")
            self.switched.emit("")

    def rest(self) -> None:
        """Give the keyboard to the photo."""
        self._view.setFocus()

    def start(self, name: str, tool: Tool) -> None:
        """Put a tool to work."""
        self.stop()
        if not self._session.has_photo:
            self._session.say_trouble(
                "photo",
                PtmarkError(tr("there is no photo yet"), mend=tr("Open a photo first.")),
            )
            return
        self.name = name
        tool.setParent(self)
        tool.changed.connect(lambda: self.hint.emit(tool.hint()))
        tool.stopped.connect(self.stop)
        self._view.set_tool(tool)
        self.live.watch(tool)
        self._view.setFocus()
        self.hint.emit(f"{tool.hint()} {tool.by_keys}".strip())
        self.switched.emit(name)

    def pick(self, kind: str, points: list[tuple[float, float]] | None = None) -> None:
        """Pick the points of a scale reference, from those given on."""
        tool = PickTool(kind, [QPointF(x, y) for x, y in points or []])
        tool.finished.connect(lambda got: self.picked.emit(kind, got))
        tool.changed.connect(
            lambda: self.picked.emit(kind, None) if len(tool.points) < tool.most else None
        )
        self.start("pick", tool)

    def mark_area(self) -> None:
        """Mark out the examined area; one marked out before can be changed."""
        state = self._session.state
        tool = AreaTool(given=(state and state.area_px) or ())

        def done(points: list[tuple[float, float]]) -> None:
            if self._session.attempt("photo", lambda: self._take_area(points)):
                self.stop()  # else the corners stay, to be mended

        tool.finished.connect(done)
        tool.stopped.connect(lambda: self._session.trouble.emit("photo", None))
        self.start("area", tool)

    def _take_area(self, points: list[tuple[float, float]]) -> None:
        from ptmark.inspection.area import check_area

        inspection = self._session.inspection
        if inspection is not None and inspection.photo is not None:
            check_area(points, inspection.photo.info)
        self._session.change(tr("mark the examined area"), area_px=tuple(points))

    def mark_weld(self) -> None:
        """Mark the course of the weld by its two ends; one marked before can be moved."""
        state = self._session.state
        tool = PickTool("weld", [QPointF(x, y) for x, y in (state and state.weld_px) or ()])
        tool.finished.connect(
            lambda got: self._session.change(tr("mark the weld"), weld_px=tuple(got))
        )
        self.start("weld", tool)

    def mark_edge(self, name: str) -> None:
        """Mark one more line that a rule measures distances to, such as a free edge."""
        tool = LineTool(tr("the line “{0}” of the part", name))

        def done(points: list[tuple[float, float]]) -> None:
            self.stop()
            state = self._session.state
            before = state.edges_px if state is not None else ()
            line = tuple((round(x, 2), round(y, 2)) for x, y in points)  # as a record holds it
            self._session.change(
                tr("mark a line of the part"), edges_px=(*before, (name, line))
            )

        tool.finished.connect(done)
        self.start("line of the part", tool)

    def trace(self, mode: str) -> None:
        """Trace an indication: "edge", "free" or "points"; goes on until Esc."""
        tool = TraceTool(mode, self._session.tracer, self._beside)
        tool.finished.connect(lambda got: self._hands.add(got, mode, tool.px_per_screen))
        self.start(f"trace {mode}", tool)

    def trace_again(self) -> None:
        """Trace the selected indication again, as it was traced; goes on until Esc."""
        one = self._session.one_selected
        if one is None or not one.edge.by_person:
            return
        mode = "edge" if one.edge.source == "snapped" else "free"
        tool = TraceTool(mode, self._session.tracer, self._beside)
        tool.finished.connect(
            lambda got: self._hands.trace_again(one.id, got, mode, tool.px_per_screen)
        )
        self.start(f"trace {one.id} again", tool)

    def _beside(self, work: Callable[[], Any], then: Callable[[], None]) -> None:
        """Run this in a worker, and that here once it is done; only the newest counts."""

        def over(_: object) -> None:
            then()

        self._session.workers.start("", lambda _: work(), over, failed=over, key="ways")

    def edit(self) -> None:
        """Edit the points of the selected outline."""
        one = self._session.one_selected
        if one is None:
            return
        tool = EditTool([(float(x), float(y)) for x, y in one.outline_px])
        tool.finished.connect(lambda got: self._hands.reshape(one.id, got, tool.px_per_screen))
        tool.wants_magnifier = False
        self.start(f"edit {one.id}", tool)

    def _follow(self) -> None:
        """After undo or redo the handles stand on the outline as it is now."""
        tool, one = self._view.tool, self._session.one_selected
        if isinstance(tool, EditTool):
            if one is None or self.name != f"edit {one.id}":
                self.stop()
            else:
                tool.follow([(float(x), float(y)) for x, y in one.outline_px])
