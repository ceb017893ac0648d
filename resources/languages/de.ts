<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
  <context>
    <name>ptmark</name>
    <message>
      <source>   and {0} more</source>
      <translation>   und {0} weitere</translation>
    </message>
    <message>
      <source>  (in the photo)</source>
      <translation>  (im Foto)</translation>
    </message>
    <message>
      <source>  (photo {0}, marked there)</source>
      <translation>  (Foto {0}, dort markiert)</translation>
    </message>
    <message>
      <source> (part {0})</source>
      <translation> (Teil {0})</translation>
    </message>
    <message>
      <source> Without a part number it is found only by its other fields.</source>
      <translation> Ohne Teilenummer wird es nur über seine anderen Felder gefunden.</translation>
    </message>
    <message>
      <source> above 1</source>
      <translation> über 1</translation>
    </message>
    <message>
      <source> and </source>
      <translation> und </translation>
    </message>
    <message>
      <source> and {0}</source>
      <translation> und {0}</translation>
    </message>
    <message>
      <source> and {0} more</source>
      <translation> und {0} weitere</translation>
    </message>
    <message>
      <source> and {0} more, marked “kept”</source>
      <translation> und {0} weitere, als „übernommen“ gekennzeichnet</translation>
    </message>
    <message>
      <source> by {0}</source>
      <translation> von {0}</translation>
    </message>
    <message>
      <source> fit the filters</source>
      <translation> zu den Filtern</translation>
    </message>
    <message>
      <source> whose part number begins with {0}</source>
      <translation> deren Teilenummer mit {0} beginnt</translation>
    </message>
    <message>
      <source> with the part number {0}</source>
      <translation> mit der Teilenummer {0}</translation>
    </message>
    <message>
      <source> with the words “{0}”; no part number begins so</source>
      <translation> mit den Wörtern „{0}“; keine Teilenummer beginnt so</translation>
    </message>
    <message>
      <source> {0} still to look at; the verdict counts them.</source>
      <translation> {0} noch anzusehen; die Bewertung zählt sie mit.</translation>
    </message>
    <message>
      <source>'{0}' is no angle</source>
      <translation>'{0}' ist kein Winkel</translation>
    </message>
    <message>
      <source>'{0}' is no day</source>
      <translation>'{0}' ist kein Tag</translation>
    </message>
    <message>
      <source>, longest {0}</source>
      <translation>, längste {0}</translation>
    </message>
    <message>
      <source>, not signed</source>
      <translation>, nicht unterschrieben</translation>
    </message>
    <message>
      <source>, retest</source>
      <translation>, Wiederholungsprüfung</translation>
    </message>
    <message>
      <source>, serial {0}</source>
      <translation>, Seriennummer {0}</translation>
    </message>
    <message>
      <source>, signed {0} times</source>
      <translation>, {0}-mal unterschrieben</translation>
    </message>
    <message>
      <source>, signed {0}×</source>
      <translation>, {0}× unterschrieben</translation>
    </message>
    <message>
      <source>, {0} more outside the examined area</source>
      <translation>, {0} weitere außerhalb des Prüfbereichs</translation>
    </message>
    <message>
      <source>0 for the first test</source>
      <translation>0 für die erste Prüfung</translation>
    </message>
    <message>
      <source>1 field missing</source>
      <translation>1 Feld fehlt</translation>
    </message>
    <message>
      <source>1 indication</source>
      <translation>1 Anzeige</translation>
    </message>
    <message>
      <source>1 record</source>
      <translation>1 Protokoll</translation>
    </message>
    <message>
      <source>2 mm</source>
      <translation>2 mm</translation>
    </message>
    <message>
      <source>5 mm</source>
      <translation>5 mm</translation>
    </message>
    <message>
      <source>A click opens it; drag it to another program or folder</source>
      <translation>Ein Klick öffnet sie; ziehen bringt sie in ein anderes Programm oder einen Ordner</translation>
    </message>
    <message>
      <source>A click takes one back as an indication.</source>
      <translation>Ein Klick nimmt sie als Anzeige zurück.</translation>
    </message>
    <message>
      <source>A new revision of a signed record</source>
      <translation>Eine neue Fassung eines unterschriebenen Protokolls</translation>
    </message>
    <message>
      <source>A pipe or bar: a line along it</source>
      <translation>Rohr oder Stange: eine Linie der Länge nach</translation>
    </message>
    <message>
      <source>A pipe or bar: its two outer edges</source>
      <translation>Rohr oder Stange: die beiden äußeren Kanten</translation>
    </message>
    <message>
      <source>A profile of your own</source>
      <translation>Ein eigenes Profil</translation>
    </message>
    <message>
      <source>A rectangle lying on a pipe or bar</source>
      <translation>Ein Rechteck auf einem Rohr oder einer Stange</translation>
    </message>
    <message>
      <source>A rectangle of known size</source>
      <translation>Ein Rechteck bekannter Größe</translation>
    </message>
    <message>
      <source>A rule lying along a pipe or bar</source>
      <translation>Ein Maßstab längs auf einem Rohr oder einer Stange</translation>
    </message>
    <message>
      <source>A signed one is never replaced: save this one where the signed record lies, so that it becomes its next revision.</source>
      <translation>Ein unterschriebenes wird nie ersetzt: Dieses dort speichern, wo das unterschriebene liegt, dann wird es dessen nächste Fassung.</translation>
    </message>
    <message>
      <source>A weld crown lies nearer to the camera than the card and reads too long.</source>
      <translation>Eine Nahtüberhöhung liegt der Kamera näher als die Karte und liest sich zu lang.</translation>
    </message>
    <message>
      <source>ASME BPVC Section V, Article 6: Table T-672 (2007 edition), 10 to 52 °C; T-676.1. Second-hand figures; the 2 h limit of the dwell is from a weak source.</source>
      <translation>ASME BPVC Section V, Article 6: Tabelle T-672 (Ausgabe 2007), 10 bis 52 °C; T-676.1. Werte aus zweiter Hand; die Grenze von 2 h für die Eindringzeit stammt aus einer schwachen Quelle.</translation>
    </message>
    <message>
      <source>ASME V, welds and castings</source>
      <translation>ASME V, Schweißnähte und Gussstücke</translation>
    </message>
    <message>
      <source>ASME V, wrought</source>
      <translation>ASME V, Schmiede- und Walzteile</translation>
    </message>
    <message>
      <source>About these rules</source>
      <translation>Über diese Regeln</translation>
    </message>
    <message>
      <source>Acceptance criteria</source>
      <translation>Zulässigkeitskriterien</translation>
    </message>
    <message>
      <source>Acceptance level</source>
      <translation>Zulässigkeitsgrenze</translation>
    </message>
    <message>
      <source>Add</source>
      <translation>Hinzufügen</translation>
    </message>
    <message>
      <source>Add a point to an outline</source>
      <translation>Einem Umriss einen Punkt hinzufügen</translation>
    </message>
    <message>
      <source>Add a row</source>
      <translation>Zeile hinzufügen</translation>
    </message>
    <message>
      <source>Add an example</source>
      <translation>Beispiel hinzufügen</translation>
    </message>
    <message>
      <source>Add another reference</source>
      <translation>Weitere Referenz hinzufügen</translation>
    </message>
    <message>
      <source>Add photos</source>
      <translation>Fotos hinzufügen</translation>
    </message>
    <message>
      <source>Add photos …</source>
      <translation>Fotos hinzufügen …</translation>
    </message>
    <message>
      <source>Adding {0}</source>
      <translation>{0} wird hinzugefügt</translation>
    </message>
    <message>
      <source>After</source>
      <translation>Nachher</translation>
    </message>
    <message>
      <source>All keys are the usual ones.</source>
      <translation>Alle Tasten sind die üblichen.</translation>
    </message>
    <message>
      <source>All keys, and how to change them</source>
      <translation>Alle Tasten, und wie man sie ändert</translation>
    </message>
    <message>
      <source>All records found, as a table (CSV) or as JSON</source>
      <translation>Alle gefundenen Protokolle, als Tabelle (CSV) oder JSON</translation>
    </message>
    <message>
      <source>All usual keys again</source>
      <translation>Wieder alle üblichen Tasten</translation>
    </message>
    <message>
      <source>All your outlines were found by the program: that checks its steadiness, not an eye. Look at the part or its photo as well.</source>
      <translation>Alle Umrisse fand das Programm: Das prüft seine Beständigkeit, kein Auge. Auch das Teil oder sein Foto ansehen.</translation>
    </message>
    <message>
      <source>All {0} looked at.</source>
      <translation>Alle {0} angesehen.</translation>
    </message>
    <message>
      <source>Along edge</source>
      <translation>An der Kante</translation>
    </message>
    <message>
      <source>An invented weld, developed and photographed with the scale card. The photo's own file is only read. The wheel zooms, dragging moves it, ‹F› fits it.</source>
      <translation>Eine erfundene Schweißnaht, entwickelt und mit der Maßstabskarte fotografiert. Die Datei des Fotos wird nur gelesen. Das Rad zoomt, Ziehen bewegt, ‹F› passt ein.</translation>
    </message>
    <message>
      <source>Annotated image (*.png *.jpg)</source>
      <translation>Bild mit Anzeigen (*.png *.jpg)</translation>
    </message>
    <message>
      <source>Another photo over it, by a slider</source>
      <translation>Ein anderes Foto darüber, mit Schieber</translation>
    </message>
    <message>
      <source>Another photo …</source>
      <translation>Anderes Foto …</translation>
    </message>
    <message>
      <source>Archive</source>
      <translation>Archiv</translation>
    </message>
    <message>
      <source>Arrow keys move the point just picked, Tab frees them.</source>
      <translation>Pfeiltasten bewegen den zuletzt gesetzten Punkt, Tab gibt sie frei.</translation>
    </message>
    <message>
      <source>Arrow keys, Tab and Space keep their places: they steer the pointer, the focus and the tool. In a line of text letters are letters.</source>
      <translation>Pfeiltasten, Tab und Leertaste behalten ihren Platz: Sie führen Zeiger, Fokus und Werkzeug. In einer Textzeile sind Buchstaben Buchstaben.</translation>
    </message>
    <message>
      <source>As a table</source>
      <translation>Als Tabelle</translation>
    </message>
    <message>
      <source>As pictures</source>
      <translation>Als Bilder</translation>
    </message>
    <message>
      <source>As the code reads: the measured value alone</source>
      <translation>Nach dem Wortlaut: allein der Messwert</translation>
    </message>
    <message>
      <source>Ask for a new photo</source>
      <translation>Neues Foto anfordern</translation>
    </message>
    <message>
      <source>At least {0:g} min.</source>
      <translation>Mindestens {0:g} min.</translation>
    </message>
    <message>
      <source>At most {0:g} min.</source>
      <translation>Höchstens {0:g} min.</translation>
    </message>
    <message>
      <source>Back</source>
      <translation>Zurück</translation>
    </message>
    <message>
      <source>Back to the work</source>
      <translation>Zurück zur Arbeit</translation>
    </message>
    <message>
      <source>Before</source>
      <translation>Vorher</translation>
    </message>
    <message>
      <source>Before rework or retest: penetrants, removers and aerosols are flammable and their vapour harms. Ventilate, keep ignition sources and welding away, wear gloves and eye protection, keep off hot or energised parts, and read the safety data sheets.</source>
      <translation>Vor Nacharbeit oder Wiederholungsprüfung: Eindringmittel, Zwischenreiniger und Sprühdosen sind entzündlich, ihre Dämpfe schädlich. Lüften, Zündquellen und Schweißarbeiten fernhalten, Handschuhe und Augenschutz tragen, nicht an heiße oder unter Spannung stehende Teile, die Sicherheitsdatenblätter lesen.</translation>
    </message>
    <message>
      <source>Below 10 °C the least dwell is doubled (Table T-672, 2007 edition).</source>
      <translation>Unter 10 °C verdoppelt sich die kürzeste Eindringzeit (Tabelle T-672, Ausgabe 2007).</translation>
    </message>
    <message>
      <source>Bent at the corner by {0:+.2f} %, u {1:.2f} %.</source>
      <translation>In der Ecke verzogen um {0:+.2f} %, u {1:.2f} %.</translation>
    </message>
    <message>
      <source>Bleed-out over time – ptmark</source>
      <translation>Ausbluten über die Zeit – ptmark</translation>
    </message>
    <message>
      <source>Both measurements, lengths with expanded uncertainty</source>
      <translation>Beide Messungen, Längen mit erweiterter Messunsicherheit</translation>
    </message>
    <message>
      <source>Both outer edges have to be in the picture: they are found beside it. Lengths are along the surface; where it turns away over 60° they are refused.</source>
      <translation>Beide äußeren Kanten müssen im Bild sein: Sie werden daneben gefunden. Längen liegen auf der Oberfläche; wo sie sich über 60° wegdreht, werden sie abgelehnt.</translation>
    </message>
    <message>
      <source>Both side by side</source>
      <translation>Beide nebeneinander</translation>
    </message>
    <message>
      <source>Bringing the work back</source>
      <translation>Die Arbeit wird zurückgeholt</translation>
    </message>
    <message>
      <source>By the procedure ({0}): {1}. Else: {2}</source>
      <translation>Nach dem Verfahren ({0}): {1}. Sonst: {2}</translation>
    </message>
    <message>
      <source>By the rule</source>
      <translation>Nach der Regel</translation>
    </message>
    <message>
      <source>By {0}: {1}.</source>
      <translation>Nach {0}: {1}.</translation>
    </message>
    <message>
      <source>Calibrate from photos</source>
      <translation>Aus Fotos kalibrieren</translation>
    </message>
    <message>
      <source>Calibrated {0} from {1} photos: {2}.</source>
      <translation>Kalibriert am {0} aus {1} Fotos: {2}.</translation>
    </message>
    <message>
      <source>Calibrating the camera</source>
      <translation>Die Kamera wird kalibriert</translation>
    </message>
    <message>
      <source>Calibration was due on</source>
      <translation>Kalibrierung war fällig am</translation>
    </message>
    <message>
      <source>Camera</source>
      <translation>Kamera</translation>
    </message>
    <message>
      <source>Camera set-up</source>
      <translation>Aufbau der Kamera</translation>
    </message>
    <message>
      <source>Cancel</source>
      <translation>Abbrechen</translation>
    </message>
    <message>
      <source>Cannot be shown: {0}</source>
      <translation>Kann nicht gezeigt werden: {0}</translation>
    </message>
    <message>
      <source>Cautions to show with every verdict, one in each line</source>
      <translation>Hinweise zu jedem Urteil, einer in jeder Zeile</translation>
    </message>
    <message>
      <source>Cell</source>
      <translation>Zelle</translation>
    </message>
    <message>
      <source>Change these rules</source>
      <translation>Regeln ändern</translation>
    </message>
    <message>
      <source>Changed by</source>
      <translation>Geändert von</translation>
    </message>
    <message>
      <source>Changes to the photo</source>
      <translation>Änderungen am Foto</translation>
    </message>
    <message>
      <source>Check everything</source>
      <translation>Alles prüfen</translation>
    </message>
    <message>
      <source>Check records and photos; rules and holds</source>
      <translation>Protokolle und Fotos prüfen; Regeln und Sperren</translation>
    </message>
    <message>
      <source>Checking the archive</source>
      <translation>Das Archiv wird geprüft</translation>
    </message>
    <message>
      <source>Choose a finding to see it on the photo. {0}</source>
      <translation>Ein Ergebnis wählen, um es im Foto zu sehen. {0}</translation>
    </message>
    <message>
      <source>Choose a line, press the new key in the field below, and use it.</source>
      <translation>Eine Zeile wählen, die neue Taste im Feld darunter drücken und sie verwenden.</translation>
    </message>
    <message>
      <source>Choose a record to review.</source>
      <translation>Ein Protokoll zur Gegenprüfung wählen.</translation>
    </message>
    <message>
      <source>Choose a reference, pick its points, type its length. {0}</source>
      <translation>Eine Referenz wählen, ihre Punkte setzen, ihre Länge eingeben. {0}</translation>
    </message>
    <message>
      <source>Choose the criteria of the contract. They are judged rule by rule, and the uncertainty can only make a verdict stricter.</source>
      <translation>Die Kriterien des Vertrags wählen. Sie werden Regel für Regel bewertet, und die Unsicherheit kann eine Bewertung nur strenger machen.</translation>
    </message>
    <message>
      <source>Choose the criteria …</source>
      <translation>Kriterien wählen …</translation>
    </message>
    <message>
      <source>Choose the second reference: both are compared, then used.</source>
      <translation>Die zweite Referenz wählen: Beide werden verglichen, dann verwendet.</translation>
    </message>
    <message>
      <source>Cleaned</source>
      <translation>Gereinigt</translation>
    </message>
    <message>
      <source>Clear all</source>
      <translation>Alles leeren</translation>
    </message>
    <message>
      <source>Click its place in the photo</source>
      <translation>Ihre Stelle im Foto anklicken</translation>
    </message>
    <message>
      <source>Click on the dye's edge and follow it; the line goes to the edge by itself.</source>
      <translation>Die Kante der Farbe anklicken und ihr folgen; die Linie geht von selbst an die Kante.</translation>
    </message>
    <message>
      <source>Click points along {0}, one after the other.</source>
      <translation>Nacheinander Punkte entlang {0} anklicken.</translation>
    </message>
    <message>
      <source>Click points round the indication.</source>
      <translation>Punkte um die Anzeige klicken.</translation>
    </message>
    <message>
      <source>Click points round {0}, one after the other.</source>
      <translation>Nacheinander Punkte um {0} klicken.</translation>
    </message>
    <message>
      <source>Click the place that the remark is about; Esc leaves it without a place.</source>
      <translation>Die Stelle der Bemerkung anklicken; Esc lässt sie ohne Stelle.</translation>
    </message>
    <message>
      <source>Close</source>
      <translation>Schließen</translation>
    </message>
    <message>
      <source>Code of the contract</source>
      <translation>Regelwerk des Vertrags</translation>
    </message>
    <message>
      <source>Common practice, no source; temperature and light as in ISO 3452-1 and ISO 3059.</source>
      <translation>Übliche Praxis, ohne Quelle; Temperatur und Licht wie in ISO 3452-1 und ISO 3059.</translation>
    </message>
    <message>
      <source>Compare</source>
      <translation>Vergleichen</translation>
    </message>
    <message>
      <source>Complete. {0}</source>
      <translation>Vollständig. {0}</translation>
    </message>
    <message>
      <source>Contaminant certificate</source>
      <translation>Bescheinigung Verunreinigungen</translation>
    </message>
    <message>
      <source>Contributions to the length's uncertainty: {0}</source>
      <translation>Beiträge zur Unsicherheit der Länge: {0}</translation>
    </message>
    <message>
      <source>Copies without their place: {0}; the originals are untouched.</source>
      <translation>Kopien ohne ihren Ort: {0}; die Originale sind unberührt.</translation>
    </message>
    <message>
      <source>Copy as table</source>
      <translation>Als Tabelle kopieren</translation>
    </message>
    <message>
      <source>Criteria</source>
      <translation>Kriterien</translation>
    </message>
    <message>
      <source>Criteria {0}</source>
      <translation>Kriterien {0}</translation>
    </message>
    <message>
      <source>Customer or inspection body</source>
      <translation>Kunde oder Prüfstelle</translation>
    </message>
    <message>
      <source>Cut off</source>
      <translation>Kappen</translation>
    </message>
    <message>
      <source>Cut off what a loop encloses</source>
      <translation>Abschneiden, was eine Schleife umschließt</translation>
    </message>
    <message>
      <source>Datum</source>
      <translation>Bezugspunkt</translation>
    </message>
    <message>
      <source>Decided by: {0}.</source>
      <translation>Entscheidend: {0}.</translation>
    </message>
    <message>
      <source>Decision</source>
      <translation>Entscheidung</translation>
    </message>
    <message>
      <source>Decision rule</source>
      <translation>Entscheidungsregel</translation>
    </message>
    <message>
      <source>Delete</source>
      <translation>Löschen</translation>
    </message>
    <message>
      <source>Delete it</source>
      <translation>Löschen</translation>
    </message>
    <message>
      <source>Delete the indication</source>
      <translation>Die Anzeige löschen</translation>
    </message>
    <message>
      <source>Developer</source>
      <translation>Entwickler</translation>
    </message>
    <message>
      <source>Developer application</source>
      <translation>Auftrag des Entwicklers</translation>
    </message>
    <message>
      <source>Developer batch</source>
      <translation>Charge des Entwicklers</translation>
    </message>
    <message>
      <source>Developer dry</source>
      <translation>Entwickler trocken</translation>
    </message>
    <message>
      <source>Developer dry at</source>
      <translation>Entwickler trocken um</translation>
    </message>
    <message>
      <source>Developer form</source>
      <translation>Art des Entwicklers</translation>
    </message>
    <message>
      <source>Developer on</source>
      <translation>Entwickler auf</translation>
    </message>
    <message>
      <source>Development</source>
      <translation>Entwicklung</translation>
    </message>
    <message>
      <source>Development time</source>
      <translation>Entwicklungszeit</translation>
    </message>
    <message>
      <source>Deviations</source>
      <translation>Abweichungen</translation>
    </message>
    <message>
      <source>Diameter of the part</source>
      <translation>Durchmesser des Teils</translation>
    </message>
    <message>
      <source>Difference</source>
      <translation>Differenz</translation>
    </message>
    <message>
      <source>Dimensions</source>
      <translation>Maße</translation>
    </message>
    <message>
      <source>Discard it</source>
      <translation>Verwerfen</translation>
    </message>
    <message>
      <source>Disposition</source>
      <translation>Entscheid</translation>
    </message>
    <message>
      <source>Done</source>
      <translation>Fertig</translation>
    </message>
    <message>
      <source>Done measuring</source>
      <translation>Fertig gemessen</translation>
    </message>
    <message>
      <source>Double-click or F2 edits kind and note; a head sorts.</source>
      <translation>Doppelklick oder F2 ändert Art und Notiz; ein Spaltenkopf sortiert.</translation>
    </message>
    <message>
      <source>Down</source>
      <translation>Ab</translation>
    </message>
    <message>
      <source>Drag a handle; double-click or Insert adds one, Backspace removes one. Tab goes to the next, arrows move it. Esc ends.</source>
      <translation>Einen Griff ziehen; Doppelklick oder Einfg fügt einen hinzu, Rücktaste entfernt einen. Tab geht zum nächsten, Pfeile bewegen ihn. Esc beendet.</translation>
    </message>
    <message>
      <source>Drag a point to move it, or Tab to it and use the arrow keys.</source>
      <translation>Einen Punkt ziehen, oder mit Tab zu ihm gehen und die Pfeiltasten nehmen.</translation>
    </message>
    <message>
      <source>Draw round the indication.</source>
      <translation>Um die Anzeige herum zeichnen.</translation>
    </message>
    <message>
      <source>Drawing and issue</source>
      <translation>Zeichnung und Ausgabe</translation>
    </message>
    <message>
      <source>Drawing the map</source>
      <translation>Die Karte wird gezeichnet</translation>
    </message>
    <message>
      <source>Drawing the report</source>
      <translation>Der Bericht wird gezeichnet</translation>
    </message>
    <message>
      <source>Drawing the view</source>
      <translation>Die Ansicht wird gezeichnet</translation>
    </message>
    <message>
      <source>Drawn by hand.</source>
      <translation>Von Hand gezeichnet.</translation>
    </message>
    <message>
      <source>Drop</source>
      <translation>Verwerfen</translation>
    </message>
    <message>
      <source>Drop it from the verdict</source>
      <translation>Aus der Bewertung nehmen</translation>
    </message>
    <message>
      <source>Drop the indication; take back a point</source>
      <translation>Die Anzeige verwerfen; einen Punkt zurücknehmen</translation>
    </message>
    <message>
      <source>Dry to the eye</source>
      <translation>Sichtbar trocken</translation>
    </message>
    <message>
      <source>Drying</source>
      <translation>Trocknen</translation>
    </message>
    <message>
      <source>Drying after removal</source>
      <translation>Trocknen nach der Zwischenreinigung</translation>
    </message>
    <message>
      <source>Dwell time</source>
      <translation>Eindringzeit</translation>
    </message>
    <message>
      <source>Dye contrast</source>
      <translation>Farbkontrast</translation>
    </message>
    <message>
      <source>Each finding names its rule, clause, value and limit. Choose one, and the photo shows what it is about.</source>
      <translation>Jedes Ergebnis nennt Regel, Abschnitt, Wert und Grenze. Eines wählen, und das Foto zeigt, worum es geht.</translation>
    </message>
    <message>
      <source>Each pair is one indication</source>
      <translation>Jedes Paar ist eine Anzeige</translation>
    </message>
    <message>
      <source>Earlier record</source>
      <translation>Voriges Protokoll</translation>
    </message>
    <message>
      <source>Edit points</source>
      <translation>Punkte ändern</translation>
    </message>
    <message>
      <source>Edition or revision it is written from</source>
      <translation>Ausgabe oder Revision, nach der es geschrieben ist</translation>
    </message>
    <message>
      <source>Empty them</source>
      <translation>Leeren</translation>
    </message>
    <message>
      <source>Emulsifier</source>
      <translation>Emulgator</translation>
    </message>
    <message>
      <source>Emulsifier batch</source>
      <translation>Charge des Emulgators</translation>
    </message>
    <message>
      <source>Enter</source>
      <translation>Enter</translation>
    </message>
    <message>
      <source>Enter ends the line; a point can be dragged.</source>
      <translation>Enter beendet die Linie; ein Punkt lässt sich ziehen.</translation>
    </message>
    <message>
      <source>Enter opens the record; results stay hidden until you measured.</source>
      <translation>Enter öffnet das Protokoll; Ergebnisse bleiben verborgen, bis gemessen ist.</translation>
    </message>
    <message>
      <source>Enter the part number here first: what the last inspection of that number had is then offered, and never taken by itself.</source>
      <translation>Hier zuerst die Teilenummer eingeben: Was die letzte Prüfung dieser Nummer hatte, wird dann angeboten, nie von selbst übernommen.</translation>
    </message>
    <message>
      <source>Enter, or a click on the first point, closes it.</source>
      <translation>Enter oder ein Klick auf den ersten Punkt schließt ihn.</translation>
    </message>
    <message>
      <source>Enter, or a click on the first point, closes the outline. Backspace: one back.</source>
      <translation>Enter oder ein Klick auf den ersten Punkt schließt den Umriss. Rücktaste: einen zurück.</translation>
    </message>
    <message>
      <source>Entering the review into {0}</source>
      <translation>Die Gegenprüfung wird in {0} eingetragen</translation>
    </message>
    <message>
      <source>Evaporation</source>
      <translation>Abdunsten</translation>
    </message>
    <message>
      <source>Every record and every photo is read again and compared with what was taken in; nothing is changed. It can be stopped and gone on with later.</source>
      <translation>Jedes Protokoll und jedes Foto wird neu gelesen und mit dem Aufgenommenen verglichen; nichts wird geändert. Es kann angehalten und später fortgesetzt werden.</translation>
    </message>
    <message>
      <source>Examination</source>
      <translation>Prüfung</translation>
    </message>
    <message>
      <source>Examination date</source>
      <translation>Datum der Prüfung</translation>
    </message>
    <message>
      <source>Examine the whole photo</source>
      <translation>Das ganze Foto prüfen</translation>
    </message>
    <message>
      <source>Examined area</source>
      <translation>Prüfbereich</translation>
    </message>
    <message>
      <source>Examined from</source>
      <translation>Geprüft ab</translation>
    </message>
    <message>
      <source>Examined on</source>
      <translation>Geprüft am</translation>
    </message>
    <message>
      <source>Examined on {0}</source>
      <translation>Geprüft am {0}</translation>
    </message>
    <message>
      <source>Examined up to</source>
      <translation>Geprüft bis</translation>
    </message>
    <message>
      <source>Examiner</source>
      <translation>Prüfer</translation>
    </message>
    <message>
      <source>Examiner's certificate</source>
      <translation>Zertifikat des Prüfers</translation>
    </message>
    <message>
      <source>Example indications</source>
      <translation>Beispielanzeigen</translation>
    </message>
    <message>
      <source>Examples, invented, in mm; change one and see.</source>
      <translation>Beispiele, erfunden, in mm; ändern und zusehen.</translation>
    </message>
    <message>
      <source>Excess removal</source>
      <translation>Zwischenreinigung</translation>
    </message>
    <message>
      <source>Farther</source>
      <translation>Ferner</translation>
    </message>
    <message>
      <source>File</source>
      <translation>Datei</translation>
    </message>
    <message>
      <source>Filter: {0}</source>
      <translation>Filter: {0}</translation>
    </message>
    <message>
      <source>Filters</source>
      <translation>Filter</translation>
    </message>
    <message>
      <source>Final look</source>
      <translation>Letzte Betrachtung</translation>
    </message>
    <message>
      <source>Final look at</source>
      <translation>Letzte Betrachtung um</translation>
    </message>
    <message>
      <source>Find by place</source>
      <translation>Nach Lage finden</translation>
    </message>
    <message>
      <source>Find in it …</source>
      <translation>Darin suchen …</translation>
    </message>
    <message>
      <source>Find in the archive (Ctrl+F)</source>
      <translation>Im Archiv suchen (Strg+F)</translation>
    </message>
    <message>
      <source>Find in the archive …</source>
      <translation>Im Archiv suchen …</translation>
    </message>
    <message>
      <source>Findings, rule by rule</source>
      <translation>Ergebnisse, Regel für Regel</translation>
    </message>
    <message>
      <source>First line</source>
      <translation>Erste Linie</translation>
    </message>
    <message>
      <source>First look at</source>
      <translation>Erste Betrachtung</translation>
    </message>
    <message>
      <source>First, {0}</source>
      <translation>Erste, {0}</translation>
    </message>
    <message>
      <source>Fit</source>
      <translation>Ganz</translation>
    </message>
    <message>
      <source>Fit the photo</source>
      <translation>Das Foto einpassen</translation>
    </message>
    <message>
      <source>Fitting the lens …</source>
      <translation>Das Objektiv wird angepasst …</translation>
    </message>
    <message>
      <source>Five steps lead to the record. Each says what it has or lacks; ‹Ctrl+Right› goes on, and nothing forces the order.</source>
      <translation>Fünf Schritte führen zum Protokoll. Jeder sagt, was er hat oder was fehlt; ‹Ctrl+Right› geht weiter, nichts erzwingt die Reihenfolge.</translation>
    </message>
    <message>
      <source>Fixes the scale but not the tilt; the unknown tilt widens every uncertainty.</source>
      <translation>Legt den Maßstab fest, nicht die Neigung; die unbekannte Neigung vergrößert jede Unsicherheit.</translation>
    </message>
    <message>
      <source>Focal length {0:.0f} px, u {1:.1f} %.</source>
      <translation>Brennweite {0:.0f} px, u {1:.1f} %.</translation>
    </message>
    <message>
      <source>Folder for the bundles</source>
      <translation>Ordner für die Pakete</translation>
    </message>
    <message>
      <source>Folder of the photos …</source>
      <translation>Ordner der Fotos …</translation>
    </message>
    <message>
      <source>For close-ups: four corners, clockwise from the top left, then two points along the pipe, on the line where the rectangle touches it.</source>
      <translation>Für Nahaufnahmen: vier Ecken, von oben links im Uhrzeigersinn, dann zwei Punkte längs des Rohrs auf der Linie, in der das Rechteck es berührt.</translation>
    </message>
    <message>
      <source>For close-ups: no edge has to be seen. Pick two points along the pipe, on the line where the flat card touches it.</source>
      <translation>Für Nahaufnahmen: Keine Kante muss zu sehen sein. Zwei Punkte längs des Rohrs setzen, auf der Linie, in der die flache Karte es berührt.</translation>
    </message>
    <message>
      <source>For close-ups: no edge has to be seen. The rule lies on the crown, the pipe's line nearest to the camera.</source>
      <translation>Für Nahaufnahmen: Keine Kante muss zu sehen sein. Der Maßstab liegt auf dem Scheitel, der Linie des Rohrs, die der Kamera am nächsten ist.</translation>
    </message>
    <message>
      <source>Four corners, clockwise from the top left. An ID-1 card is 85.60 × 53.98 mm.</source>
      <translation>Vier Ecken, von oben links im Uhrzeigersinn. Eine ID-1-Karte misst 85,60 × 53,98 mm.</translation>
    </message>
    <message>
      <source>Free</source>
      <translation>Frei</translation>
    </message>
    <message>
      <source>From above</source>
      <translation>Von oben</translation>
    </message>
    <message>
      <source>Go on where it stopped</source>
      <translation>Dort weitermachen</translation>
    </message>
    <message>
      <source>Go on with it</source>
      <translation>Damit weitermachen</translation>
    </message>
    <message>
      <source>Go on with it as its examiner</source>
      <translation>Als sein Prüfer damit weitermachen</translation>
    </message>
    <message>
      <source>Good</source>
      <translation>Gut</translation>
    </message>
    <message>
      <source>Grid</source>
      <translation>Raster</translation>
    </message>
    <message>
      <source>Grid and scale bar on the surface</source>
      <translation>Raster und Maßstabsbalken auf der Oberfläche</translation>
    </message>
    <message>
      <source>Growth</source>
      <translation>Wachstum</translation>
    </message>
    <message>
      <source>Guided pass on a sample, three minutes</source>
      <translation>Geführter Durchgang, drei Minuten</translation>
    </message>
    <message>
      <source>Guided pass on a sample: go on at {0}</source>
      <translation>Geführter Durchgang: weiter bei {0}</translation>
    </message>
    <message>
      <source>Guided pass, {0} of {1}</source>
      <translation>Geführter Durchgang, {0} von {1}</translation>
    </message>
    <message>
      <source>Hard</source>
      <translation>Schwierig</translation>
    </message>
    <message>
      <source>Heat or cast number</source>
      <translation>Schmelz- oder Chargennummer</translation>
    </message>
    <message>
      <source>Height</source>
      <translation>Höhe</translation>
    </message>
    <message>
      <source>Height of the indications above the surface</source>
      <translation>Höhe der Anzeigen über der Oberfläche</translation>
    </message>
    <message>
      <source>Height of the reference</source>
      <translation>Höhe der Referenz</translation>
    </message>
    <message>
      <source>Height of the reference above the surface</source>
      <translation>Höhe der Referenz über der Oberfläche</translation>
    </message>
    <message>
      <source>History of the part</source>
      <translation>Verlauf des Teils</translation>
    </message>
    <message>
      <source>History of the serial</source>
      <translation>Verlauf der Seriennummer</translation>
    </message>
    <message>
      <source>Hold the button down and draw round the indication.</source>
      <translation>Die Taste halten und um die Anzeige zeichnen.</translation>
    </message>
    <message>
      <source>How far the check is</source>
      <translation>Wie weit die Prüfung ist</translation>
    </message>
    <message>
      <source>How long records are kept</source>
      <translation>Wie lange Protokolle bleiben</translation>
    </message>
    <message>
      <source>ISO 3452-1</source>
      <translation>ISO 3452-1</translation>
    </message>
    <message>
      <source>ISO 3452-1, 8.4.2 (2020 text): dwell, and never under the maker's time; 8.6: development, second-hand figures, longer by agreement.</source>
      <translation>ISO 3452-1, 8.4.2 (Text von 2020): Eindringzeit, nie unter der Angabe des Herstellers; 8.6: Entwicklung, Werte aus zweiter Hand, länger nach Vereinbarung.</translation>
    </message>
    <message>
      <source>ISO 3452-6 is for colder surfaces, ISO 3452-5 for hotter ones.</source>
      <translation>Für kältere Oberflächen gilt ISO 3452-6, für heißere ISO 3452-5.</translation>
    </message>
    <message>
      <source>Illuminance</source>
      <translation>Beleuchtungsstärke</translation>
    </message>
    <message>
      <source>Image …</source>
      <translation>Bild …</translation>
    </message>
    <message>
      <source>In one place: {0}.</source>
      <translation>An einer Stelle: {0}.</translation>
    </message>
    <message>
      <source>In other photos</source>
      <translation>In anderen Fotos</translation>
    </message>
    <message>
      <source>In the photo: your outlines as you made them; the first's dash-dotted, and named “first” where the two differ. En above 1: they differ by more than their uncertainties together (ISO/IEC 17043).</source>
      <translation>Im Foto: die eigenen Umrisse, wie sie gezeichnet wurden; die des Ersten strichpunktiert und mit „first“ benannt, wo beide abweichen. En über 1: Sie weichen um mehr ab als ihre Unsicherheiten zusammen (ISO/IEC 17043).</translation>
    </message>
    <message>
      <source>Indication {0}</source>
      <translation>Anzeige {0}</translation>
    </message>
    <message>
      <source>Indications</source>
      <translation>Anzeigen</translation>
    </message>
    <message>
      <source>Inspections (filled) and indications (hatched)</source>
      <translation>Prüfungen (gefüllt) und Anzeigen (schraffiert)</translation>
    </message>
    <message>
      <source>Inspections found, as pictures; Enter opens</source>
      <translation>Gefundene Prüfungen als Bilder; Enter öffnet</translation>
    </message>
    <message>
      <source>Inspections: {0}; serials: {1}; indications: {2}; retests: {3}; {4}.</source>
      <translation>Prüfungen: {0}; Seriennummern: {1}; Anzeigen: {2}; Wiederholungsprüfungen: {3}; {4}.</translation>
    </message>
    <message>
      <source>Inspections; Enter opens</source>
      <translation>Prüfungen; Enter öffnet</translation>
    </message>
    <message>
      <source>It can be saved all the same.</source>
      <translation>Speichern geht trotzdem.</translation>
    </message>
    <message>
      <source>It is no retest</source>
      <translation>Keine Wiederholungsprüfung</translation>
    </message>
    <message>
      <source>It needs {0}.</source>
      <translation>Es fehlt: {0}.</translation>
    </message>
    <message>
      <source>It stays until you say which one counts.</source>
      <translation>Es bleibt, bis gesagt ist, welches gilt.</translation>
    </message>
    <message>
      <source>Job or order number</source>
      <translation>Auftragsnummer</translation>
    </message>
    <message>
      <source>Join</source>
      <translation>Verbinden</translation>
    </message>
    <message>
      <source>Judge again</source>
      <translation>Neu bewerten</translation>
    </message>
    <message>
      <source>Judge again by</source>
      <translation>Neu bewerten nach</translation>
    </message>
    <message>
      <source>Judge again by other criteria</source>
      <translation>Nach anderen Kriterien neu bewerten</translation>
    </message>
    <message>
      <source>Judging again</source>
      <translation>Wird neu bewertet</translation>
    </message>
    <message>
      <source>Keep every record that is saved</source>
      <translation>Jedes gespeicherte Protokoll aufbewahren</translation>
    </message>
    <message>
      <source>Keep in the archive</source>
      <translation>Im Archiv aufbewahren</translation>
    </message>
    <message>
      <source>Keep this profile</source>
      <translation>Dieses Profil behalten</translation>
    </message>
    <message>
      <source>Keeping {0}</source>
      <translation>{0} wird aufbewahrt</translation>
    </message>
    <message>
      <source>Kept as {0}; it is used for this camera's photos.</source>
      <translation>Als {0} behalten; es gilt für die Fotos dieser Kamera.</translation>
    </message>
    <message>
      <source>Kept for</source>
      <translation>Bleibt</translation>
    </message>
    <message>
      <source>Kept from an earlier inspection: {0}{1}. Look whether it holds for this part.</source>
      <translation>Von einer früheren Prüfung übernommen: {0}{1}. Nachsehen, ob es für dieses Teil gilt.</translation>
    </message>
    <message>
      <source>Key</source>
      <translation>Taste</translation>
    </message>
    <message>
      <source>Keys</source>
      <translation>Tasten</translation>
    </message>
    <message>
      <source>Keys – ptmark</source>
      <translation>Tasten – ptmark</translation>
    </message>
    <message>
      <source>Kind</source>
      <translation>Art</translation>
    </message>
    <message>
      <source>Kind of rule to add</source>
      <translation>Art der neuen Regel</translation>
    </message>
    <message>
      <source>Kind, as ISO 6520-1 names it</source>
      <translation>Art, wie ISO 6520-1 sie nennt</translation>
    </message>
    <message>
      <source>L/W</source>
      <translation>L/B</translation>
    </message>
    <message>
      <source>Laid over each other, on the surface only: {0} points agree, in the middle within {1:.1f} px.</source>
      <translation>Übereinandergelegt, nur auf der Oberfläche: {0} Punkte stimmen überein, in der Mitte auf {1:.1f} px.</translation>
    </message>
    <message>
      <source>Language of the window</source>
      <translation>Sprache des Fensters</translation>
    </message>
    <message>
      <source>Lay the photos over each other and see which indications lie in one place</source>
      <translation>Die Fotos übereinanderlegen und sehen, welche Anzeigen an einer Stelle liegen</translation>
    </message>
    <message>
      <source>Laying both side by side</source>
      <translation>Beide werden nebeneinandergelegt</translation>
    </message>
    <message>
      <source>Laying it over the photo …</source>
      <translation>Wird über das Foto gelegt …</translation>
    </message>
    <message>
      <source>Laying the photos over each other</source>
      <translation>Die Fotos werden übereinandergelegt</translation>
    </message>
    <message>
      <source>Laying {0} over the photo</source>
      <translation>{0} wird über das Foto gelegt</translation>
    </message>
    <message>
      <source>Leave</source>
      <translation>Verlassen</translation>
    </message>
    <message>
      <source>Leave it</source>
      <translation>Lassen</translation>
    </message>
    <message>
      <source>Leave it as signed</source>
      <translation>Wie unterschrieben lassen</translation>
    </message>
    <message>
      <source>Leave the guided pass</source>
      <translation>Den geführten Durchgang verlassen</translation>
    </message>
    <message>
      <source>Left out, by reason</source>
      <translation>Ausgelassene, nach Grund</translation>
    </message>
    <message>
      <source>Left top at x, y mm</source>
      <translation>Links oben bei x, y mm</translation>
    </message>
    <message>
      <source>Left top corner of the drawing on the part, x, y mm</source>
      <translation>Linke obere Ecke der Zeichnung auf dem Teil, x, y mm</translation>
    </message>
    <message>
      <source>Length</source>
      <translation>Länge</translation>
    </message>
    <message>
      <source>Length and area against minutes since the developer was dry</source>
      <translation>Länge und Fläche über den Minuten, seit der Entwickler trocken war</translation>
    </message>
    <message>
      <source>Length from</source>
      <translation>Länge von</translation>
    </message>
    <message>
      <source>Length of weld</source>
      <translation>Länge der Schweißnaht</translation>
    </message>
    <message>
      <source>Length up to</source>
      <translation>Länge bis</translation>
    </message>
    <message>
      <source>Length ± U</source>
      <translation>Länge ± U</translation>
    </message>
    <message>
      <source>Lengths: longest ± U (solid, round points), mean (dashed, square points)</source>
      <translation>Längen: längste ± U (durchgezogen, runde Punkte), mittlere (gestrichelt, eckige Punkte)</translation>
    </message>
    <message>
      <source>Lens</source>
      <translation>Objektiv</translation>
    </message>
    <message>
      <source>Lens of the camera</source>
      <translation>Objektiv der Kamera</translation>
    </message>
    <message>
      <source>Light meter</source>
      <translation>Luxmeter</translation>
    </message>
    <message>
      <source>Light source</source>
      <translation>Lichtquelle</translation>
    </message>
    <message>
      <source>Limits of the examination</source>
      <translation>Grenzen der Prüfung</translation>
    </message>
    <message>
      <source>Limits of the procedure …</source>
      <translation>Grenzen des Verfahrens …</translation>
    </message>
    <message>
      <source>Limits of the times</source>
      <translation>Grenzen der Zeiten</translation>
    </message>
    <message>
      <source>Line between the two photos</source>
      <translation>Linie zwischen den beiden Fotos</translation>
    </message>
    <message>
      <source>Line of the part</source>
      <translation>Linie am Teil</translation>
    </message>
    <message>
      <source>Location datum</source>
      <translation>Bezugspunkt der Lage</translation>
    </message>
    <message>
      <source>Location datum of the records laid over each other</source>
      <translation>Bezugspunkt der übereinandergelegten Protokolle</translation>
    </message>
    <message>
      <source>Longest</source>
      <translation>Längste</translation>
    </message>
    <message>
      <source>Look again</source>
      <translation>Neu suchen</translation>
    </message>
    <message>
      <source>Look for indications again; what you took or dropped stays</source>
      <translation>Noch einmal nach Anzeigen suchen; Übernommenes und Verworfenes bleibt</translation>
    </message>
    <message>
      <source>Looking for indications</source>
      <translation>Anzeigen werden gesucht</translation>
    </message>
    <message>
      <source>Looking for indications …</source>
      <translation>Anzeigen werden gesucht …</translation>
    </message>
    <message>
      <source>Looking for the scale card</source>
      <translation>Die Maßstabskarte wird gesucht</translation>
    </message>
    <message>
      <source>Make one outline of all selected</source>
      <translation>Einen Umriss aus allen gewählten machen</translation>
    </message>
    <message>
      <source>Mark out the area</source>
      <translation>Bereich markieren</translation>
    </message>
    <message>
      <source>Mark the weld</source>
      <translation>Schweißnaht markieren</translation>
    </message>
    <message>
      <source>Mark this line</source>
      <translation>Diese Linie markieren</translation>
    </message>
    <message>
      <source>Marked out, {0} corners.</source>
      <translation>Markiert, {0} Ecken.</translation>
    </message>
    <message>
      <source>Material</source>
      <translation>Werkstoff</translation>
    </message>
    <message>
      <source>Measure as if nobody had before you: set the scale with your own picks, trace or take the outlines, and leave out what is none. The first numbers, outlines and verdict are hidden until you are done; after that, your own count as they are now.</source>
      <translation>Messen, als hätte es noch niemand getan: den Maßstab mit eigenen Punkten setzen, Umrisse zeichnen oder übernehmen, weglassen, was keine Anzeige ist. Die ersten Werte, Umrisse und die Bewertung bleiben verborgen, bis fertig gemessen ist; danach zählen die eigenen, wie sie jetzt sind.</translation>
    </message>
    <message>
      <source>Measure, judge and document penetrant indications from a photo</source>
      <translation>Eindringanzeigen nach einem Foto messen, bewerten und belegen</translation>
    </message>
    <message>
      <source>Measured check length</source>
      <translation>Gemessene Prüflänge</translation>
    </message>
    <message>
      <source>Measured. Changing your outlines now changes nothing in this comparison.</source>
      <translation>Gemessen. Änderungen an den Umrissen ändern an diesem Vergleich nichts mehr.</translation>
    </message>
    <message>
      <source>Move it down</source>
      <translation>Nach unten</translation>
    </message>
    <message>
      <source>Move this rule up</source>
      <translation>Diese Regel nach oben</translation>
    </message>
    <message>
      <source>Name</source>
      <translation>Name</translation>
    </message>
    <message>
      <source>Name of the {0}</source>
      <translation>Name: {0}</translation>
    </message>
    <message>
      <source>Name to save this search under</source>
      <translation>Name, unter dem diese Suche gespeichert wird</translation>
    </message>
    <message>
      <source>Name: small letters, digits, dots, hyphens</source>
      <translation>Name: kleine Buchstaben, Ziffern, Punkte, Bindestriche</translation>
    </message>
    <message>
      <source>Nearer</source>
      <translation>Näher</translation>
    </message>
    <message>
      <source>Neither grid nor card found in: {0}.</source>
      <translation>Weder Raster noch Karte gefunden in: {0}.</translation>
    </message>
    <message>
      <source>New key for what is chosen in the list</source>
      <translation>Neue Taste für das in der Liste Gewählte</translation>
    </message>
    <message>
      <source>Next</source>
      <translation>Nächstes</translation>
    </message>
    <message>
      <source>Next part</source>
      <translation>Nächstes Teil</translation>
    </message>
    <message>
      <source>Next record</source>
      <translation>Nächstes Protokoll</translation>
    </message>
    <message>
      <source>Next step</source>
      <translation>Nächster Schritt</translation>
    </message>
    <message>
      <source>No figure.</source>
      <translation>Kein Wert.</translation>
    </message>
    <message>
      <source>No record in this folder waits for a review.</source>
      <translation>Kein Protokoll in diesem Ordner wartet auf eine Gegenprüfung.</translation>
    </message>
    <message>
      <source>No record of this part number holds an indication with a place in millimetres: that takes a scale in the photo.</source>
      <translation>Kein Protokoll dieser Teilenummer hat eine Anzeige mit Lage in Millimetern: Das braucht einen Maßstab im Foto.</translation>
    </message>
    <message>
      <source>No record on the map has a photo with a flat scale to lay under it.</source>
      <translation>Kein Protokoll der Karte hat ein Foto mit ebenem Maßstab, das darunterliegen könnte.</translation>
    </message>
    <message>
      <source>No record{0}.</source>
      <translation>Kein Protokoll{0}.</translation>
    </message>
    <message>
      <source>No relevant indication was found.</source>
      <translation>Keine relevante Anzeige gefunden.</translation>
    </message>
    <message>
      <source>No scale card was found in this photo. Pick a reference below: a rectangle, two lines or one line of known length in the plane of the surface.</source>
      <translation>In diesem Foto wurde keine Maßstabskarte gefunden. Unten eine Referenz wählen: ein Rechteck, zwei Linien oder eine Linie bekannter Länge in der Ebene der Oberfläche.</translation>
    </message>
    <message>
      <source>No two lie surely in one place; say it by hand where you see it.</source>
      <translation>Keine zwei liegen sicher an einer Stelle; von Hand sagen, wo man es sieht.</translation>
    </message>
    <message>
      <source>No verdict yet</source>
      <translation>Noch keine Bewertung</translation>
    </message>
    <message>
      <source>No verdict yet.</source>
      <translation>Noch keine Bewertung.</translation>
    </message>
    <message>
      <source>None of the {0} records says where it lies on the part. Give the same location datum (at the Record step, such as “corner at hole A, x along the weld”) in each of them, and choose it here; or lay them by hand: ptmark archive place.</source>
      <translation>Keines der {0} Protokolle sagt, wo auf dem Teil es liegt. In jedem denselben Bezugspunkt angeben (im Schritt Protokoll, etwa „Ecke an Bohrung A, x längs der Naht“) und ihn hier wählen; oder sie von Hand legen: ptmark archive place.</translation>
    </message>
    <message>
      <source>None of these photos has a scale.</source>
      <translation>Keines dieser Fotos hat einen Maßstab.</translation>
    </message>
    <message>
      <source>None yet: “Filters” has where to save one.</source>
      <translation>Noch keine: Unter „Filter“ wird eine gespeichert.</translation>
    </message>
    <message>
      <source>Not calibrated: what a camera's own correction leaves is in U.</source>
      <translation>Nicht kalibriert: Was die Korrektur der Kamera übrig lässt, steckt in U.</translation>
    </message>
    <message>
      <source>Not kept: {0}</source>
      <translation>Nicht aufbewahrt: {0}</translation>
    </message>
    <message>
      <source>Not saved yet. Changed since: {0}{1}.</source>
      <translation>Noch nicht gespeichert. Geändert seither: {0}{1}.</translation>
    </message>
    <message>
      <source>Not saved: {0}</source>
      <translation>Nicht gespeichert: {0}</translation>
    </message>
    <message>
      <source>Not yet complete.</source>
      <translation>Noch nicht vollständig.</translation>
    </message>
    <message>
      <source>Note</source>
      <translation>Notiz</translation>
    </message>
    <message>
      <source>Nothing in the archive fits.

• The line on top is the beginning of a part number: P-1 finds P-17 and P-170. A * stands for any letters, a ? for one: *17 finds what ends in 17.
• Where no part number begins so, it is looked for among the words of the records: remarks, kinds, notes, names.
• Kind, shape and lengths ask for one indication that has all of them.
• Capitals do not matter. “Clear all” takes every filter away.</source>
      <translation>Nichts im Archiv passt.

• Die Zeile oben ist der Anfang einer Teilenummer: P-1 findet P-17 und P-170. Ein * steht für beliebige Zeichen, ein ? für eines: *17 findet, was auf 17 endet.
• Wo keine Teilenummer so beginnt, wird unter den Wörtern der Protokolle gesucht: Bemerkungen, Arten, Notizen, Namen.
• Art, Form und Längen verlangen eine Anzeige, die alle davon hat.
• Großschreibung zählt nicht. „Alles leeren“ nimmt jeden Filter weg.</translation>
    </message>
    <message>
      <source>Nothing is above a limit.</source>
      <translation>Nichts liegt über einer Grenze.</translation>
    </message>
    <message>
      <source>Nothing is judged until every rule is complete.</source>
      <translation>Bewertet wird erst, wenn jede Regel vollständig ist.</translation>
    </message>
    <message>
      <source>Nothing to redo</source>
      <translation>Nichts zu wiederholen</translation>
    </message>
    <message>
      <source>Nothing to undo</source>
      <translation>Nichts rückgängig zu machen</translation>
    </message>
    <message>
      <source>Nothing was found. Look yourself, and trace what you see.</source>
      <translation>Nichts gefunden. Selbst hinsehen und zeichnen, was zu sehen ist.</translation>
    </message>
    <message>
      <source>Nothing: blank rules</source>
      <translation>Nichts: leere Regeln</translation>
    </message>
    <message>
      <source>Of procedure {0}. An empty field leaves the standard's figure.</source>
      <translation>Des Verfahrens {0}. Ein leeres Feld lässt den Wert der Norm.</translation>
    </message>
    <message>
      <source>Once measured, with your name and key</source>
      <translation>Wenn gemessen ist, mit Name und Schlüssel</translation>
    </message>
    <message>
      <source>One ZIP for each record found, with its photos, schema and checksums</source>
      <translation>Ein ZIP für jedes gefundene Protokoll, mit Fotos, Schema und Prüfsummen</translation>
    </message>
    <message>
      <source>One line of known length</source>
      <translation>Eine Linie bekannter Länge</translation>
    </message>
    <message>
      <source>One photo again</source>
      <translation>Wieder ein Foto</translation>
    </message>
    <message>
      <source>One pixel is {0}.</source>
      <translation>Ein Pixel ist {0}.</translation>
    </message>
    <message>
      <source>Only your own</source>
      <translation>Nur eigene</translation>
    </message>
    <message>
      <source>Open a photo</source>
      <translation>Foto öffnen</translation>
    </message>
    <message>
      <source>Open a photo first.</source>
      <translation>Zuerst ein Foto öffnen.</translation>
    </message>
    <message>
      <source>Open a photo first; suggestions come by themselves.</source>
      <translation>Zuerst ein Foto öffnen; Vorschläge kommen von selbst.</translation>
    </message>
    <message>
      <source>Open a photo …</source>
      <translation>Foto öffnen …</translation>
    </message>
    <message>
      <source>Open a record</source>
      <translation>Protokoll öffnen</translation>
    </message>
    <message>
      <source>Open a record …</source>
      <translation>Protokoll öffnen …</translation>
    </message>
    <message>
      <source>Open the record {0}</source>
      <translation>Das Protokoll {0} öffnen</translation>
    </message>
    <message>
      <source>Open {0}</source>
      <translation>{0} öffnen</translation>
    </message>
    <message>
      <source>Opening the record under review</source>
      <translation>Das Protokoll zur Gegenprüfung wird geöffnet</translation>
    </message>
    <message>
      <source>Opening {0}</source>
      <translation>{0} wird geöffnet</translation>
    </message>
    <message>
      <source>Opens its photo, linked to this record</source>
      <translation>Öffnet ihr Foto, mit diesem Protokoll verbunden</translation>
    </message>
    <message>
      <source>Or drop a photo anywhere on the window; several become one inspection.</source>
      <translation>Oder ein Foto irgendwo auf das Fenster ziehen; mehrere werden eine Prüfung.</translation>
    </message>
    <message>
      <source>Or try it on a sample, rendered and invented:</source>
      <translation>Oder an einem Beispiel versuchen, gerechnet und erfunden:</translation>
    </message>
    <message>
      <source>Out of the inspection, with its outlines; undo brings it back</source>
      <translation>Aus der Prüfung, mit seinen Umrissen; Rückgängig holt es zurück</translation>
    </message>
    <message>
      <source>Outlines are suggestions until you have looked at each: ‹Return› takes one, ‹Del› drops it, and the next one is shown. Look at all of them now.</source>
      <translation>Umrisse sind Vorschläge, bis jeder angesehen ist: ‹Return› übernimmt einen, ‹Del› verwirft ihn, und der nächste wird gezeigt. Jetzt alle ansehen.</translation>
    </message>
    <message>
      <source>Outside diameter</source>
      <translation>Außendurchmesser</translation>
    </message>
    <message>
      <source>Outside the limits, and not said why: {0}.</source>
      <translation>Außerhalb der Grenzen und ohne Grund: {0}.</translation>
    </message>
    <message>
      <source>Overview and close-ups of the same part: one inspection, one record</source>
      <translation>Übersicht und Nahaufnahmen desselben Teils: eine Prüfung, ein Protokoll</translation>
    </message>
    <message>
      <source>Own, {0}</source>
      <translation>Eigene, {0}</translation>
    </message>
    <message>
      <source>PDF (*.pdf)</source>
      <translation>PDF (*.pdf)</translation>
    </message>
    <message>
      <source>Pair</source>
      <translation>Paar</translation>
    </message>
    <message>
      <source>Part</source>
      <translation>Teil</translation>
    </message>
    <message>
      <source>Part number</source>
      <translation>Teilenummer</translation>
    </message>
    <message>
      <source>Part number {0}</source>
      <translation>Teilenummer {0}</translation>
    </message>
    <message>
      <source>Part number {0}, serial {1}</source>
      <translation>Teilenummer {0}, Seriennummer {1}</translation>
    </message>
    <message>
      <source>Part number, as far as you know it (* and ? for the rest), or words of records</source>
      <translation>Teilenummer, soweit bekannt (* und ? für den Rest), oder Wörter aus Protokollen</translation>
    </message>
    <message>
      <source>Parts of these rules</source>
      <translation>Teile dieser Regeln</translation>
    </message>
    <message>
      <source>Path</source>
      <translation>Weg</translation>
    </message>
    <message>
      <source>Penetrant</source>
      <translation>Eindringmittel</translation>
    </message>
    <message>
      <source>Penetrant application</source>
      <translation>Auftrag des Eindringmittels</translation>
    </message>
    <message>
      <source>Penetrant batch</source>
      <translation>Charge des Eindringmittels</translation>
    </message>
    <message>
      <source>Penetrant dwell</source>
      <translation>Eindringzeit</translation>
    </message>
    <message>
      <source>Penetrant on</source>
      <translation>Eindringmittel auf</translation>
    </message>
    <message>
      <source>Penetrant on at</source>
      <translation>Eindringmittel aufgetragen um</translation>
    </message>
    <message>
      <source>Penetrant system</source>
      <translation>Eindringmittelsystem</translation>
    </message>
    <message>
      <source>Penetrant type</source>
      <translation>Art des Eindringmittels</translation>
    </message>
    <message>
      <source>Photo</source>
      <translation>Foto</translation>
    </message>
    <message>
      <source>Photo of the record</source>
      <translation>Foto des Protokolls</translation>
    </message>
    <message>
      <source>Photo {0} of {1}</source>
      <translation>Foto {0} von {1}</translation>
    </message>
    <message>
      <source>Photo {0} of {1} …</source>
      <translation>Foto {0} von {1} …</translation>
    </message>
    <message>
      <source>Photo {0} of {1}, {2}: {3}</source>
      <translation>Foto {0} von {1}, {2}: {3}</translation>
    </message>
    <message>
      <source>Photo {0} {1} (En {2:.2f}).</source>
      <translation>Foto {0} {1} (En {2:.2f}).</translation>
    </message>
    <message>
      <source>Photograph the developed part square on, evenly lit, with the scale card or a rule lying in the plane of the surface. Then drop the photo here.</source>
      <translation>Das entwickelte Teil gerade von vorn aufnehmen, gleichmäßig beleuchtet, mit der Maßstabskarte oder einem Maßstab in der Ebene der Oberfläche. Dann das Foto hierher ziehen.</translation>
    </message>
    <message>
      <source>Photos (*.jpg *.jpeg *.png *.tif *.tiff *.webp *.heic *.heif);;All files (*)</source>
      <translation>Fotos (*.jpg *.jpeg *.png *.tif *.tiff *.webp *.heic *.heif);;Alle Dateien (*)</translation>
    </message>
    <message>
      <source>Photos of the record</source>
      <translation>Fotos des Protokolls</translation>
    </message>
    <message>
      <source>Photos of the records</source>
      <translation>Fotos der Protokolle</translation>
    </message>
    <message>
      <source>Photos of this inspection</source>
      <translation>Fotos dieser Prüfung</translation>
    </message>
    <message>
      <source>Pick the points</source>
      <translation>Punkte setzen</translation>
    </message>
    <message>
      <source>Pick the {0}.</source>
      <translation>Setzen: {0}.</translation>
    </message>
    <message>
      <source>Pick them on the photo.</source>
      <translation>Im Foto setzen.</translation>
    </message>
    <message>
      <source>Pink haze of the background: {0:.0f} % of full dye.</source>
      <translation>Rosa Schleier des Untergrunds: {0:.0f} % der vollen Farbe.</translation>
    </message>
    <message>
      <source>Place</source>
      <translation>Ort</translation>
    </message>
    <message>
      <source>Place it …</source>
      <translation>Stelle zeigen …</translation>
    </message>
    <message>
      <source>Place map</source>
      <translation>Lagekarte</translation>
    </message>
    <message>
      <source>Place map of the part</source>
      <translation>Lagekarte des Teils</translation>
    </message>
    <message>
      <source>Place map; arrow keys go from cell to cell</source>
      <translation>Lagekarte; Pfeiltasten gehen von Zelle zu Zelle</translation>
    </message>
    <message>
      <source>Plot of the years. {0}</source>
      <translation>Verlauf über die Jahre. {0}</translation>
    </message>
    <message>
      <source>Plotting bleed-out</source>
      <translation>Das Ausbluten wird aufgetragen</translation>
    </message>
    <message>
      <source>Points</source>
      <translation>Punkte</translation>
    </message>
    <message>
      <source>Position of the photo</source>
      <translation>Lage des Fotos</translation>
    </message>
    <message>
      <source>Post-cleaning</source>
      <translation>Nachreinigung</translation>
    </message>
    <message>
      <source>Pre-cleaning and drying</source>
      <translation>Vorreinigung und Trocknung</translation>
    </message>
    <message>
      <source>Print the grid, lay it flat, and take 8 to 15 photos of it with this camera at one zoom: filling the picture, in each corner, aslant.</source>
      <translation>Das Raster drucken, flach hinlegen und mit dieser Kamera bei einer Brennweite 8 bis 15 Fotos davon machen: bildfüllend, in jeder Ecke, schräg.</translation>
    </message>
    <message>
      <source>Print {0}</source>
      <translation>{0} drucken</translation>
    </message>
    <message>
      <source>Print …</source>
      <translation>Drucken …</translation>
    </message>
    <message>
      <source>Printing {0}</source>
      <translation>{0} wird gedruckt</translation>
    </message>
    <message>
      <source>Procedure</source>
      <translation>Verfahren</translation>
    </message>
    <message>
      <source>Procedure revision</source>
      <translation>Revision des Verfahrens</translation>
    </message>
    <message>
      <source>Process</source>
      <translation>Ablauf</translation>
    </message>
    <message>
      <source>Process log</source>
      <translation>Ablauf der Prüfung</translation>
    </message>
    <message>
      <source>Progress</source>
      <translation>Fortschritt</translation>
    </message>
    <message>
      <source>Purpose of the test</source>
      <translation>Zweck der Prüfung</translation>
    </message>
    <message>
      <source>Put mine in its place</source>
      <translation>Meines an seine Stelle setzen</translation>
    </message>
    <message>
      <source>Puts this inspection away as it is and begins one without a photo: the process can be timed before there is a picture</source>
      <translation>Legt diese Prüfung weg, wie sie ist, und beginnt eine ohne Foto: Die Zeiten können laufen, ehe es ein Bild gibt</translation>
    </message>
    <message>
      <source>Qualification</source>
      <translation>Qualifikation</translation>
    </message>
    <message>
      <source>Qualification of the {0}</source>
      <translation>Qualifikation: {0}</translation>
    </message>
    <message>
      <source>Qualify the procedure by Appendix III.</source>
      <translation>Das Verfahren nach Appendix III qualifizieren.</translation>
    </message>
    <message>
      <source>Reading the history</source>
      <translation>Der Verlauf wird gelesen</translation>
    </message>
    <message>
      <source>Reading the places</source>
      <translation>Die Lagen werden gelesen</translation>
    </message>
    <message>
      <source>Reading the record</source>
      <translation>Das Protokoll wird gelesen</translation>
    </message>
    <message>
      <source>Reading the records in {0}</source>
      <translation>Die Protokolle in {0} werden gelesen</translation>
    </message>
    <message>
      <source>Reason</source>
      <translation>Grund</translation>
    </message>
    <message>
      <source>Reason of the change</source>
      <translation>Grund der Änderung</translation>
    </message>
    <message>
      <source>Reason of the disposition</source>
      <translation>Grund des Entscheids</translation>
    </message>
    <message>
      <source>Reason why it is not relevant</source>
      <translation>Grund, warum sie nicht relevant ist</translation>
    </message>
    <message>
      <source>Record</source>
      <translation>Protokoll</translation>
    </message>
    <message>
      <source>Record (*.json)</source>
      <translation>Protokoll (*.json)</translation>
    </message>
    <message>
      <source>Record or photo</source>
      <translation>Protokoll oder Foto</translation>
    </message>
    <message>
      <source>Record …</source>
      <translation>Protokoll …</translation>
    </message>
    <message>
      <source>Records</source>
      <translation>Protokolle</translation>
    </message>
    <message>
      <source>Records (*.json);;All files (*)</source>
      <translation>Protokolle (*.json);;Alle Dateien (*)</translation>
    </message>
    <message>
      <source>Records to review</source>
      <translation>Protokolle zur Gegenprüfung</translation>
    </message>
    <message>
      <source>Redo</source>
      <translation>Erneut</translation>
    </message>
    <message>
      <source>Redo: {0} ({1})</source>
      <translation>Wiederholen: {0} ({1})</translation>
    </message>
    <message>
      <source>Reference in the photo</source>
      <translation>Referenz im Foto</translation>
    </message>
    <message>
      <source>Rejectable</source>
      <translation>Nicht zulässig</translation>
    </message>
    <message>
      <source>Rejected or sent to rework, share of those disposed of</source>
      <translation>Zurückgewiesen oder nachgearbeitet, Anteil der entschiedenen</translation>
    </message>
    <message>
      <source>Relevance</source>
      <translation>Relevanz</translation>
    </message>
    <message>
      <source>Remark</source>
      <translation>Bemerkung</translation>
    </message>
    <message>
      <source>Remarks</source>
      <translation>Bemerkungen</translation>
    </message>
    <message>
      <source>Remarks of the reviewer</source>
      <translation>Bemerkungen des Gegenprüfers</translation>
    </message>
    <message>
      <source>Remarks; Delete takes one back</source>
      <translation>Bemerkungen; Entf nimmt eine zurück</translation>
    </message>
    <message>
      <source>Removal begun</source>
      <translation>Zwischenreinigung begonnen</translation>
    </message>
    <message>
      <source>Removal begun at</source>
      <translation>Zwischenreinigung begonnen um</translation>
    </message>
    <message>
      <source>Remove it</source>
      <translation>Entfernen</translation>
    </message>
    <message>
      <source>Remove its lines</source>
      <translation>Ihre Linien entfernen</translation>
    </message>
    <message>
      <source>Remove the line</source>
      <translation>Linie entfernen</translation>
    </message>
    <message>
      <source>Remove the scale</source>
      <translation>Maßstab entfernen</translation>
    </message>
    <message>
      <source>Remove the scale first.</source>
      <translation>Zuerst den Maßstab entfernen.</translation>
    </message>
    <message>
      <source>Remover</source>
      <translation>Zwischenreiniger</translation>
    </message>
    <message>
      <source>Remover batch</source>
      <translation>Charge des Zwischenreinigers</translation>
    </message>
    <message>
      <source>Remover type</source>
      <translation>Art des Zwischenreinigers</translation>
    </message>
    <message>
      <source>Report as PDF …</source>
      <translation>Bericht als PDF …</translation>
    </message>
    <message>
      <source>Report of the record; wheel zooms, drag moves</source>
      <translation>Bericht des Protokolls; Rad zoomt, Ziehen bewegt</translation>
    </message>
    <message>
      <source>Reports and records stay in English.</source>
      <translation>Berichte und Protokolle bleiben englisch.</translation>
    </message>
    <message>
      <source>Reshape what is selected</source>
      <translation>Gewählte umformen</translation>
    </message>
    <message>
      <source>Resolution check</source>
      <translation>Prüfung der Auflösung</translation>
    </message>
    <message>
      <source>Retest cycle</source>
      <translation>Durchgang der Wiederholungsprüfung</translation>
    </message>
    <message>
      <source>Retest of the record {0}</source>
      <translation>Wiederholungsprüfung zum Protokoll {0}</translation>
    </message>
    <message>
      <source>Retest of the record {0}, revision {1}.</source>
      <translation>Wiederholungsprüfung zum Protokoll {0}, Fassung {1}.</translation>
    </message>
    <message>
      <source>Retest outcome</source>
      <translation>Ergebnis der Wiederholungsprüfung</translation>
    </message>
    <message>
      <source>Return it</source>
      <translation>Zurückgeben</translation>
    </message>
    <message>
      <source>Review a folder of records …</source>
      <translation>Ordner gegenprüfen …</translation>
    </message>
    <message>
      <source>Review date</source>
      <translation>Datum der Gegenprüfung</translation>
    </message>
    <message>
      <source>Review it blind</source>
      <translation>Blind gegenprüfen</translation>
    </message>
    <message>
      <source>Reviewer</source>
      <translation>Gegenprüfer</translation>
    </message>
    <message>
      <source>Reviewer's certificate</source>
      <translation>Zertifikat des Gegenprüfers</translation>
    </message>
    <message>
      <source>Revision {0}{1}</source>
      <translation>Fassung {0}{1}</translation>
    </message>
    <message>
      <source>Rework</source>
      <translation>Nacharbeit</translation>
    </message>
    <message>
      <source>Row {0}, limit</source>
      <translation>Zeile {0}, Grenze</translation>
    </message>
    <message>
      <source>Row {0}, up to</source>
      <translation>Zeile {0}, bis</translation>
    </message>
    <message>
      <source>Rule</source>
      <translation>Regel</translation>
    </message>
    <message>
      <source>Rule by rule</source>
      <translation>Regel für Regel</translation>
    </message>
    <message>
      <source>Rules and holds</source>
      <translation>Regeln und Sperren</translation>
    </message>
    <message>
      <source>Rules for a drawing</source>
      <translation>Regeln für eine Zeichnung</translation>
    </message>
    <message>
      <source>Rules, in order</source>
      <translation>Regeln, der Reihe nach</translation>
    </message>
    <message>
      <source>SHA-256 of its content: {0} …</source>
      <translation>SHA-256 seines Inhalts: {0} …</translation>
    </message>
    <message>
      <source>Same as</source>
      <translation>Dieselbe wie</translation>
    </message>
    <message>
      <source>Save</source>
      <translation>Speichern</translation>
    </message>
    <message>
      <source>Save and use</source>
      <translation>Speichern und verwenden</translation>
    </message>
    <message>
      <source>Save bundles …</source>
      <translation>Pakete speichern …</translation>
    </message>
    <message>
      <source>Save record, image and PDF</source>
      <translation>Protokoll, Bild und PDF speichern</translation>
    </message>
    <message>
      <source>Save the grid to print</source>
      <translation>Das Raster zum Drucken speichern</translation>
    </message>
    <message>
      <source>Save the list …</source>
      <translation>Liste speichern …</translation>
    </message>
    <message>
      <source>Save the map …</source>
      <translation>Karte speichern …</translation>
    </message>
    <message>
      <source>Save the record first; what lies saved is what gets signed.</source>
      <translation>Zuerst das Protokoll speichern; unterschrieben wird, was gespeichert liegt.</translation>
    </message>
    <message>
      <source>Save the revision</source>
      <translation>Fassung speichern</translation>
    </message>
    <message>
      <source>Save this search</source>
      <translation>Diese Suche speichern</translation>
    </message>
    <message>
      <source>Saved and chosen: {0}. {1}</source>
      <translation>Gespeichert und gewählt: {0}. {1}</translation>
    </message>
    <message>
      <source>Saved last:</source>
      <translation>Zuletzt gespeichert:</translation>
    </message>
    <message>
      <source>Saved searches</source>
      <translation>Gespeicherte Suchen</translation>
    </message>
    <message>
      <source>Saved {0} in {1}</source>
      <translation>{0} in {1} gespeichert</translation>
    </message>
    <message>
      <source>Saving {0}</source>
      <translation>{0} wird gespeichert</translation>
    </message>
    <message>
      <source>Say who changes the record, and why.</source>
      <translation>Angeben, wer das Protokoll ändert und warum.</translation>
    </message>
    <message>
      <source>Scale</source>
      <translation>Maßstab</translation>
    </message>
    <message>
      <source>Scale card, found by itself</source>
      <translation>Maßstabskarte, wird selbst gefunden</translation>
    </message>
    <message>
      <source>Scale from: {0} and {1}.</source>
      <translation>Maßstab aus: {0} und {1}.</translation>
    </message>
    <message>
      <source>Scale from: {0}.</source>
      <translation>Maßstab aus: {0}.</translation>
    </message>
    <message>
      <source>Scale or rule</source>
      <translation>Maßstab oder Lineal</translation>
    </message>
    <message>
      <source>Search the archive</source>
      <translation>Das Archiv durchsuchen</translation>
    </message>
    <message>
      <source>Second line</source>
      <translation>Zweite Linie</translation>
    </message>
    <message>
      <source>Select nothing; put the tool away</source>
      <translation>Nichts auswählen; das Werkzeug weglegen</translation>
    </message>
    <message>
      <source>Select one indication first.</source>
      <translation>Zuerst eine Anzeige wählen.</translation>
    </message>
    <message>
      <source>Selected rows, or all, tab-separated</source>
      <translation>Gewählte Zeilen oder alle, durch Tabulator getrennt</translation>
    </message>
    <message>
      <source>Serial</source>
      <translation>Seriennummer</translation>
    </message>
    <message>
      <source>Serial number</source>
      <translation>Seriennummer</translation>
    </message>
    <message>
      <source>Shape</source>
      <translation>Form</translation>
    </message>
    <message>
      <source>Show lengths in the other unit</source>
      <translation>Längen in der anderen Einheit zeigen</translation>
    </message>
    <message>
      <source>Show only, by {0}</source>
      <translation>Nur zeigen, nach {0}</translation>
    </message>
    <message>
      <source>Show pixel for pixel</source>
      <translation>Pixel für Pixel zeigen</translation>
    </message>
    <message>
      <source>Show the {0} left out{1}</source>
      <translation>Die {0} ausgelassenen zeigen{1}</translation>
    </message>
    <message>
      <source>Sign as the examiner</source>
      <translation>Als Prüfer unterschreiben</translation>
    </message>
    <message>
      <source>Sign it</source>
      <translation>Unterschreiben</translation>
    </message>
    <message>
      <source>Sign the saved record</source>
      <translation>Das gespeicherte Protokoll unterschreiben</translation>
    </message>
    <message>
      <source>Signing {0}</source>
      <translation>{0} wird unterschrieben</translation>
    </message>
    <message>
      <source>Size</source>
      <translation>Größe</translation>
    </message>
    <message>
      <source>Size from</source>
      <translation>Größe aus</translation>
    </message>
    <message>
      <source>Size of a cell</source>
      <translation>Größe einer Zelle</translation>
    </message>
    <message>
      <source>Size of record from</source>
      <translation>Gültige Größe aus</translation>
    </message>
    <message>
      <source>Size of record from photo {0}.</source>
      <translation>Gültige Größe aus Foto {0}.</translation>
    </message>
    <message>
      <source>Size of what is being drawn</source>
      <translation>Größe dessen, was gezeichnet wird</translation>
    </message>
    <message>
      <source>Sketch: {0}</source>
      <translation>Skizze: {0}</translation>
    </message>
    <message>
      <source>Smooth</source>
      <translation>Glätten</translation>
    </message>
    <message>
      <source>Source: drawing, order, page</source>
      <translation>Quelle: Zeichnung, Auftrag, Seite</translation>
    </message>
    <message>
      <source>Split</source>
      <translation>Teilen</translation>
    </message>
    <message>
      <source>Split it along a line across it</source>
      <translation>Mit einer Linie quer darüber teilen</translation>
    </message>
    <message>
      <source>Stage of manufacture</source>
      <translation>Fertigungsstand</translation>
    </message>
    <message>
      <source>Standing</source>
      <translation>Stand</translation>
    </message>
    <message>
      <source>Start a retest …</source>
      <translation>Wiederholungsprüfung beginnen …</translation>
    </message>
    <message>
      <source>Start anew from it</source>
      <translation>Von dort neu beginnen</translation>
    </message>
    <message>
      <source>Start from</source>
      <translation>Beginnen mit</translation>
    </message>
    <message>
      <source>State of the archive</source>
      <translation>Zustand des Archivs</translation>
    </message>
    <message>
      <source>State of the archive …</source>
      <translation>Zustand des Archivs …</translation>
    </message>
    <message>
      <source>Step before</source>
      <translation>Voriger Schritt</translation>
    </message>
    <message>
      <source>Step {0}, {1}: {2}</source>
      <translation>Schritt {0}, {1}: {2}</translation>
    </message>
    <message>
      <source>Steps of the work</source>
      <translation>Schritte der Arbeit</translation>
    </message>
    <message>
      <source>Still missing: {0}.</source>
      <translation>Es fehlt noch: {0}.</translation>
    </message>
    <message>
      <source>Stop</source>
      <translation>Anhalten</translation>
    </message>
    <message>
      <source>Stop calibrating</source>
      <translation>Kalibrieren abbrechen</translation>
    </message>
    <message>
      <source>Stopped. “Go on where it stopped” reads the rest.</source>
      <translation>Angehalten. „Dort weitermachen“ liest den Rest.</translation>
    </message>
    <message>
      <source>Suggested, confidence {0:.2f}.</source>
      <translation>Vorgeschlagen, Sicherheit {0:.2f}.</translation>
    </message>
    <message>
      <source>Surface condition</source>
      <translation>Zustand der Oberfläche</translation>
    </message>
    <message>
      <source>Surface temperature</source>
      <translation>Temperatur der Oberfläche</translation>
    </message>
    <message>
      <source>System designation</source>
      <translation>Bezeichnung des Systems</translation>
    </message>
    <message>
      <source>System performance check</source>
      <translation>Kontrolle des Prüfsystems</translation>
    </message>
    <message>
      <source>Table</source>
      <translation>Tabelle</translation>
    </message>
    <message>
      <source>Table (*.csv)</source>
      <translation>Tabelle (*.csv)</translation>
    </message>
    <message>
      <source>Table …</source>
      <translation>Tabelle …</translation>
    </message>
    <message>
      <source>Take</source>
      <translation>Übernehmen</translation>
    </message>
    <message>
      <source>Take all</source>
      <translation>Alle übernehmen</translation>
    </message>
    <message>
      <source>Take all indications</source>
      <translation>Alle Anzeigen übernehmen</translation>
    </message>
    <message>
      <source>Take away</source>
      <translation>Wegnehmen</translation>
    </message>
    <message>
      <source>Take back</source>
      <translation>Zurücknehmen</translation>
    </message>
    <message>
      <source>Take every suggestion not looked at</source>
      <translation>Jeden noch nicht angesehenen Vorschlag übernehmen</translation>
    </message>
    <message>
      <source>Take it over</source>
      <translation>Übernehmen</translation>
    </message>
    <message>
      <source>Take row {0} away</source>
      <translation>Zeile {0} wegnehmen</translation>
    </message>
    <message>
      <source>Take the hand's wobble out</source>
      <translation>Das Zittern der Hand herausnehmen</translation>
    </message>
    <message>
      <source>Take the indication; end what is drawn</source>
      <translation>Die Anzeige übernehmen; beenden, was gezeichnet wird</translation>
    </message>
    <message>
      <source>Take the suggestion</source>
      <translation>Den Vorschlag übernehmen</translation>
    </message>
    <message>
      <source>Take this photo out</source>
      <translation>Dieses Foto herausnehmen</translation>
    </message>
    <message>
      <source>Take this row away</source>
      <translation>Diese Zeile wegnehmen</translation>
    </message>
    <message>
      <source>Taken</source>
      <translation>Aufgenommen</translation>
    </message>
    <message>
      <source>Takes the marks away</source>
      <translation>Nimmt die Kennzeichen weg</translation>
    </message>
    <message>
      <source>The archive is empty.

It keeps records and their photos for each part number, so that a later question, “what did we see at this place on this part, and are the pictures the originals?”, has an answer.

To put the first record in: finish an inspection, give it a part number at the Record step, and press “Keep in the archive” (Ctrl+K) there. Tick “Keep every record that is saved” and it goes by itself.

The archive lies in your own folder on this computer and needs no set-up.</source>
      <translation>Das Archiv ist leer.

Es bewahrt Protokolle und ihre Fotos zu jeder Teilenummer auf, damit die spätere Frage „Was haben wir an dieser Stelle dieses Teils gesehen, und sind die Bilder die Originale?“ eine Antwort hat.

Das erste Protokoll kommt so hinein: eine Prüfung beenden, ihr im Schritt Protokoll eine Teilenummer geben und dort „Im Archiv aufbewahren“ (Strg+K) drücken. Mit „Jedes gespeicherte Protokoll aufbewahren“ geht es von selbst.

Das Archiv liegt im eigenen Ordner auf diesem Rechner und braucht keine Einrichtung.</translation>
    </message>
    <message>
      <source>The archive keeps another state of this record: revision {0} of {1}{2}, {3}, {4} indications. </source>
      <translation>Das Archiv bewahrt einen anderen Stand dieses Protokolls auf: Fassung {0} vom {1}{2}, {3}, {4} Anzeigen. </translation>
    </message>
    <message>
      <source>The bundles then hold copies of the photos; the originals keep their place</source>
      <translation>Die Pakete enthalten dann Kopien der Fotos; die Originale behalten ihren Ort</translation>
    </message>
    <message>
      <source>The card was found, so pixels are millimetres now. Without a card, choose a rule or a rectangle and pick its points. Every length carries its ± U from here on.</source>
      <translation>Die Karte wurde gefunden, Pixel sind jetzt Millimeter. Ohne Karte einen Maßstab oder ein Rechteck wählen und seine Punkte setzen. Jede Länge trägt von hier an ihr ± U.</translation>
    </message>
    <message>
      <source>The date can be read two ways. Write it year-month-day.</source>
      <translation>Das Datum kann auf zwei Arten gelesen werden. Jahr-Monat-Tag schreiben.</translation>
    </message>
    <message>
      <source>The draft could not be written: {0}</source>
      <translation>Der Entwurf konnte nicht geschrieben werden: {0}</translation>
    </message>
    <message>
      <source>The dye's contrast alone</source>
      <translation>Allein der Kontrast der Farbe</translation>
    </message>
    <message>
      <source>The examples below</source>
      <translation>Die Beispiele unten</translation>
    </message>
    <message>
      <source>The file</source>
      <translation>Die Datei</translation>
    </message>
    <message>
      <source>The indications of this inspection</source>
      <translation>Die Anzeigen dieser Prüfung</translation>
    </message>
    <message>
      <source>The keys could not be kept: {0}</source>
      <translation>Die Tasten konnten nicht behalten werden: {0}</translation>
    </message>
    <message>
      <source>The limits could not be kept: {0}</source>
      <translation>Die Grenzen konnten nicht behalten werden: {0}</translation>
    </message>
    <message>
      <source>The next photo</source>
      <translation>Das nächste Foto</translation>
    </message>
    <message>
      <source>The other photo</source>
      <translation>Das andere Foto</translation>
    </message>
    <message>
      <source>The photo before</source>
      <translation>Das vorige Foto</translation>
    </message>
    <message>
      <source>The photo of {0} cannot be read: check the archive.</source>
      <translation>Das Foto von {0} ist nicht lesbar: das Archiv prüfen.</translation>
    </message>
    <message>
      <source>The photo's own file is only read, never written. Its SHA-256 goes into the record, so that anyone can tell later that it is the same picture.</source>
      <translation>Die Datei des Fotos wird nur gelesen, nie geschrieben. Ihr SHA-256 geht ins Protokoll, damit später jeder sagen kann, dass es dasselbe Bild ist.</translation>
    </message>
    <message>
      <source>The points fit to {0:.2f} px.</source>
      <translation>Die Punkte passen auf {0:.2f} px.</translation>
    </message>
    <message>
      <source>The procedure and the maker's sheet govern; these limits only remind.</source>
      <translation>Es gelten das Verfahren und das Blatt des Herstellers; diese Grenzen erinnern nur.</translation>
    </message>
    <message>
      <source>The profile {0} fits this camera and is left out.</source>
      <translation>Das Profil {0} passt zu dieser Kamera und bleibt außer Acht.</translation>
    </message>
    <message>
      <source>The reason is a remark</source>
      <translation>Der Grund ist eine Bemerkung</translation>
    </message>
    <message>
      <source>The record and its photos, found again by part number</source>
      <translation>Das Protokoll und seine Fotos, über die Teilenummer wiederzufinden</translation>
    </message>
    <message>
      <source>The record names no procedure yet; these hold wherever it names none.</source>
      <translation>Das Protokoll nennt noch kein Verfahren; diese gelten überall, wo es keines nennt.</translation>
    </message>
    <message>
      <source>The record stays as it is. A verdict is an aid; the inspector decides.</source>
      <translation>Das Protokoll bleibt, wie es ist. Eine Bewertung ist eine Hilfe; der Prüfer entscheidet.</translation>
    </message>
    <message>
      <source>The remark is about {0:.0f}, {1:.0f} px.</source>
      <translation>Die Bemerkung betrifft {0:.0f}, {1:.0f} px.</translation>
    </message>
    <message>
      <source>The rules ask for the distance from: {0}.</source>
      <translation>Die Regeln fragen nach dem Abstand von: {0}.</translation>
    </message>
    <message>
      <source>The rules can no longer be used, so this verdict stands on none. {0}</source>
      <translation>Die Regeln sind nicht mehr zu gebrauchen, diese Bewertung steht auf keinen. {0}</translation>
    </message>
    <message>
      <source>The rules have been changed since this verdict was made: it is stale.</source>
      <translation>Die Regeln wurden seit dieser Bewertung geändert: Sie ist überholt.</translation>
    </message>
    <message>
      <source>The same indication as</source>
      <translation>Dieselbe Anzeige wie</translation>
    </message>
    <message>
      <source>The saved search “{0}” is deleted; no record is.</source>
      <translation>Die gespeicherte Suche „{0}“ ist gelöscht, kein Protokoll.</translation>
    </message>
    <message>
      <source>The scale card lying on a pipe or bar</source>
      <translation>Die Maßstabskarte auf einem Rohr oder einer Stange</translation>
    </message>
    <message>
      <source>The search is saved as “{0}”.</source>
      <translation>Die Suche ist als „{0}“ gespeichert.</translation>
    </message>
    <message>
      <source>The signature covers the record and its photos; a later change becomes a revision.</source>
      <translation>Die Unterschrift deckt das Protokoll und seine Fotos; eine spätere Änderung wird eine neue Fassung.</translation>
    </message>
    <message>
      <source>The surface seen from above</source>
      <translation>Die Oberfläche von oben gesehen</translation>
    </message>
    <message>
      <source>The thinnest first. A last row without “up to” holds above.</source>
      <translation>Die dünnste zuerst. Eine letzte Zeile ohne „bis“ gilt darüber.</translation>
    </message>
    <message>
      <source>The tool's own printed card. Measure its 80 mm check length with callipers, if you can: it corrects the print and narrows the uncertainty.</source>
      <translation>Die gedruckte Karte des Programms. Ihre Prüflänge von 80 mm möglichst mit dem Messschieber messen: Das berichtigt den Druck und verkleinert die Unsicherheit.</translation>
    </message>
    <message>
      <source>The two agree within their uncertainties.</source>
      <translation>Beide stimmen im Rahmen ihrer Unsicherheiten überein.</translation>
    </message>
    <message>
      <source>The uncertainty counts: near the limit is undecided</source>
      <translation>Mit Unsicherheit: nahe der Grenze unentschieden</translation>
    </message>
    <message>
      <source>The usual key again</source>
      <translation>Wieder die übliche Taste</translation>
    </message>
    <message>
      <source>The verdict is an aid. The contract's own edition and local codes govern, and the certified inspector decides. Colour vision and lighting must be qualified.</source>
      <translation>Die Bewertung ist eine Hilfe. Es gelten die Ausgabe des Vertrags und örtliche Vorschriften, und es entscheidet der zertifizierte Prüfer. Farbsehen und Beleuchtung müssen qualifiziert sein.</translation>
    </message>
    <message>
      <source>The verdict is an aid; you decide. Choose a decision. Where it departs from the verdict, the record asks why.</source>
      <translation>Die Bewertung ist eine Hilfe; entscheiden muss ein Mensch. Einen Entscheid wählen. Wo er von der Bewertung abweicht, fragt das Protokoll nach dem Grund.</translation>
    </message>
    <message>
      <source>The verdict is: {0}.</source>
      <translation>Die Bewertung lautet: {0}.</translation>
    </message>
    <message>
      <source>The whole photo.</source>
      <translation>Das ganze Foto.</translation>
    </message>
    <message>
      <source>There is no rule and no hold, so nothing may ever be deleted. What the contract and law ask for is set by: ptmark archive keep --rule NAME --years N --reason TEXT, with the same filters as a search.</source>
      <translation>Es gibt keine Regel und keine Sperre, nichts darf je gelöscht werden. Was Vertrag und Gesetz verlangen, setzt: ptmark archive keep --rule NAME --years N --reason TEXT, mit den Filtern einer Suche.</translation>
    </message>
    <message>
      <source>There is no scale yet: nothing is measured without one.</source>
      <translation>Es gibt noch keinen Maßstab: Ohne ihn wird nichts gemessen.</translation>
    </message>
    <message>
      <source>Thermometer</source>
      <translation>Thermometer</translation>
    </message>
    <message>
      <source>They differ by {0:+.2f} % (En {1:.1f}; up to 1 they agree).</source>
      <translation>Sie weichen um {0:+.2f} % ab (En {1:.1f}; bis 1 stimmen sie überein).</translation>
    </message>
    <message>
      <source>They do not lie over each other, place by place: {0}</source>
      <translation>Sie liegen nicht Stelle für Stelle übereinander: {0}</translation>
    </message>
    <message>
      <source>They hold here too</source>
      <translation>Sie gelten auch hier</translation>
    </message>
    <message>
      <source>Thickness</source>
      <translation>Dicke</translation>
    </message>
    <message>
      <source>This batch expired on</source>
      <translation>Diese Charge lief ab am</translation>
    </message>
    <message>
      <source>This departs from the verdict; give the reason.</source>
      <translation>Das weicht von der Bewertung ab; den Grund angeben.</translation>
    </message>
    <message>
      <source>This inspection</source>
      <translation>Diese Prüfung</translation>
    </message>
    <message>
      <source>This is photo {0} of {1}, judged </source>
      <translation>Dies ist Foto {0} von {1}, bewertet </translation>
    </message>
    <message>
      <source>This part number was last inspected on {0}{1} ({2}). From there: {3}{4}.</source>
      <translation>Diese Teilenummer wurde zuletzt am {0}{1} geprüft ({2}). Von dort: {3}{4}.</translation>
    </message>
    <message>
      <source>Three minutes on an invented sample photo</source>
      <translation>Drei Minuten an einem erfundenen Beispielfoto</translation>
    </message>
    <message>
      <source>Tilt {0:.1f}°.</source>
      <translation>Neigung {0:.1f}°.</translation>
    </message>
    <message>
      <source>Timer</source>
      <translation>Uhr</translation>
    </message>
    <message>
      <source>Timers for drying, dwell, evaporation and development write into the record. What is too early or too late is said, and you give the reason.</source>
      <translation>Uhren für Trocknen, Eindringen, Abdunsten und Entwickeln schreiben ins Protokoll. Was zu früh oder zu spät ist, wird gesagt, und der Grund wird angegeben.</translation>
    </message>
    <message>
      <source>Title, as lists and reports show it</source>
      <translation>Titel, wie Listen und Berichte ihn zeigen</translation>
    </message>
    <message>
      <source>To look at below: {0}.</source>
      <translation>Unten anzusehen: {0}.</translation>
    </message>
    <message>
      <source>To the examiner, with the remarks</source>
      <translation>An den Prüfer, mit den Bemerkungen</translation>
    </message>
    <message>
      <source>Too bright: {0:.4g} lx of other light, {1:g} lx at most for fluorescent penetrant ({2}).</source>
      <translation>Zu hell: {0:.4g} lx Fremdlicht, höchstens {1:g} lx bei fluoreszierendem Eindringmittel ({2}).</translation>
    </message>
    <message>
      <source>Too cold: {0:.3g} °C is below {1}. {2}</source>
      <translation>Zu kalt: {0:.3g} °C liegt unter {1}. {2}</translation>
    </message>
    <message>
      <source>Too dark: {0:.4g} lx, at least {1:g} lx ({2}).</source>
      <translation>Zu dunkel: {0:.4g} lx, mindestens {1:g} lx ({2}).</translation>
    </message>
    <message>
      <source>Too hot: {0:.3g} °C is above {1}. {2}</source>
      <translation>Zu heiß: {0:.3g} °C liegt über {1}. {2}</translation>
    </message>
    <message>
      <source>Too weak: {0:.4g} µW/cm², at least {1:g} µW/cm² ({2}).</source>
      <translation>Zu schwach: {0:.4g} µW/cm², mindestens {1:g} µW/cm² ({2}).</translation>
    </message>
    <message>
      <source>Trace by hand</source>
      <translation>Von Hand zeichnen</translation>
    </message>
    <message>
      <source>Try the sample photo {0}</source>
      <translation>Das Beispielfoto {0} versuchen</translation>
    </message>
    <message>
      <source>Turn</source>
      <translation>Drehen</translation>
    </message>
    <message>
      <source>Turn the view by a quarter, clockwise</source>
      <translation>Die Ansicht um ein Viertel im Uhrzeigersinn drehen</translation>
    </message>
    <message>
      <source>Turned °</source>
      <translation>Gedreht °</translation>
    </message>
    <message>
      <source>Turning to {0}</source>
      <translation>Wechsel zu {0}</translation>
    </message>
    <message>
      <source>Two known lengths in the plane of the surface, at right angles: scale and tilt.</source>
      <translation>Zwei bekannte Längen in der Ebene der Oberfläche, im rechten Winkel: Maßstab und Neigung.</translation>
    </message>
    <message>
      <source>Two lines at right angles</source>
      <translation>Zwei Linien im rechten Winkel</translation>
    </message>
    <message>
      <source>Two points far apart on each outer edge; roughly, where the edge is clear. Lengths are along the surface; where it turns away over 60° they are refused.</source>
      <translation>Zwei weit entfernte Punkte auf jeder äußeren Kante; ungefähr, wo die Kante klar ist. Längen liegen auf der Oberfläche; wo sie sich über 60° wegdreht, werden sie abgelehnt.</translation>
    </message>
    <message>
      <source>Two points on the photo: the course of the weld, and its length</source>
      <translation>Zwei Punkte im Foto: der Verlauf der Schweißnaht und ihre Länge</translation>
    </message>
    <message>
      <source>UV-A irradiance</source>
      <translation>UV-A-Bestrahlungsstärke</translation>
    </message>
    <message>
      <source>UV-A meter</source>
      <translation>UV-A-Messgerät</translation>
    </message>
    <message>
      <source>Undecided</source>
      <translation>Unentschieden</translation>
    </message>
    <message>
      <source>Under it</source>
      <translation>Darunter</translation>
    </message>
    <message>
      <source>Under it: the photo of {0}, laid flat by its scale.</source>
      <translation>Darunter: das Foto von {0}, nach seinem Maßstab flach gelegt.</translation>
    </message>
    <message>
      <source>Undo</source>
      <translation>Rückgängig</translation>
    </message>
    <message>
      <source>Undo brings them back</source>
      <translation>Rückgängig holt sie zurück</translation>
    </message>
    <message>
      <source>Undo: {0} ({1})</source>
      <translation>Rückgängig: {0} ({1})</translation>
    </message>
    <message>
      <source>Unfinished {0}: {1}{2}, last changed {3}.</source>
      <translation>Unfertige {0}: {1}{2}, zuletzt geändert {3}.</translation>
    </message>
    <message>
      <source>Unit of every figure</source>
      <translation>Einheit aller Werte</translation>
    </message>
    <message>
      <source>Up</source>
      <translation>Auf</translation>
    </message>
    <message>
      <source>Use a table in place of one limit</source>
      <translation>Eine Tabelle statt einer Grenze verwenden</translation>
    </message>
    <message>
      <source>Use one reference only</source>
      <translation>Nur eine Referenz verwenden</translation>
    </message>
    <message>
      <source>Use the profile of this camera</source>
      <translation>Das Profil dieser Kamera verwenden</translation>
    </message>
    <message>
      <source>Use this key</source>
      <translation>Diese Taste verwenden</translation>
    </message>
    <message>
      <source>Use this scale</source>
      <translation>Diesen Maßstab verwenden</translation>
    </message>
    <message>
      <source>Verdict</source>
      <translation>Bewertung</translation>
    </message>
    <message>
      <source>Verdict of the first: {0}; your own: {1}.</source>
      <translation>Bewertung des Ersten: {0}; die eigene: {1}.</translation>
    </message>
    <message>
      <source>Verdict: {0}. {1}</source>
      <translation>Bewertung: {0}. {1}</translation>
    </message>
    <message>
      <source>Verdict: {0}; disposition: {1}</source>
      <translation>Bewertung: {0}; Entscheid: {1}</translation>
    </message>
    <message>
      <source>Vision check</source>
      <translation>Sehtest</translation>
    </message>
    <message>
      <source>Weld number</source>
      <translation>Nahtnummer</translation>
    </message>
    <message>
      <source>What</source>
      <translation>Was</translation>
    </message>
    <message>
      <source>What changes by the other criteria</source>
      <translation>Was sich nach den anderen Kriterien ändert</translation>
    </message>
    <message>
      <source>What governs</source>
      <translation>Was gilt</translation>
    </message>
    <message>
      <source>What it does</source>
      <translation>Was sie tut</translation>
    </message>
    <message>
      <source>What lies outside the examined area is not called</source>
      <translation>Was außerhalb des Prüfbereichs liegt, wird nicht gemeldet</translation>
    </message>
    <message>
      <source>What lies under the map</source>
      <translation>Was unter der Karte liegt</translation>
    </message>
    <message>
      <source>What the examiner should do or look at</source>
      <translation>Was der Prüfer tun oder ansehen soll</translation>
    </message>
    <message>
      <source>What these rules say</source>
      <translation>Was diese Regeln sagen</translation>
    </message>
    <message>
      <source>What these rules say, finding by finding</source>
      <translation>Was diese Regeln sagen, Ergebnis für Ergebnis</translation>
    </message>
    <message>
      <source>What was found</source>
      <translation>Was gefunden wurde</translation>
    </message>
    <message>
      <source>What would help most: {0}.</source>
      <translation>Am meisten hülfe: {0}.</translation>
    </message>
    <message>
      <source>Wheel or plus and minus zoom, F fits, 1 shows pixel for pixel, Ctrl and arrow keys move the photo.</source>
      <translation>Rad oder Plus und Minus zoomen, F passt ein, 1 zeigt Pixel für Pixel, Strg und Pfeiltasten bewegen das Foto.</translation>
    </message>
    <message>
      <source>Wheel zooms, drag moves the photo, ‹F› fits it.</source>
      <translation>Das Rad zoomt, Ziehen bewegt das Foto, ‹F› passt es ein.</translation>
    </message>
    <message>
      <source>Where</source>
      <translation>Wo</translation>
    </message>
    <message>
      <source>Where indications of part number {0} were seen</source>
      <translation>Wo Anzeigen der Teilenummer {0} gesehen wurden</translation>
    </message>
    <message>
      <source>Where it was taken stands in the photo: {0}. An export can leave it out; the original keeps it.</source>
      <translation>Wo es aufgenommen wurde, steht im Foto: {0}. Ein Export kann es weglassen; das Original behält es.</translation>
    </message>
    <message>
      <source>Which indications to show</source>
      <translation>Welche Anzeigen gezeigt werden</translation>
    </message>
    <message>
      <source>Which records</source>
      <translation>Welche Protokolle</translation>
    </message>
    <message>
      <source>Why</source>
      <translation>Warum</translation>
    </message>
    <message>
      <source>Why {0} was outside its limits</source>
      <translation>Warum außerhalb der Grenzen: {0}</translation>
    </message>
    <message>
      <source>Why, all the same: {0}</source>
      <translation>Warum dennoch: {0}</translation>
    </message>
    <message>
      <source>Width</source>
      <translation>Breite</translation>
    </message>
    <message>
      <source>Width (long side)</source>
      <translation>Breite (lange Seite)</translation>
    </message>
    <message>
      <source>Width of the drawing on the part</source>
      <translation>Breite der Zeichnung auf dem Teil</translation>
    </message>
    <message>
      <source>Wiped clean</source>
      <translation>Sauber gewischt</translation>
    </message>
    <message>
      <source>Working distance {0:.0f} mm.</source>
      <translation>Arbeitsabstand {0:.0f} mm.</translation>
    </message>
    <message>
      <source>Working out the scale</source>
      <translation>Der Maßstab wird berechnet</translation>
    </message>
    <message>
      <source>Write rules for a drawing</source>
      <translation>Eigene Regeln schreiben</translation>
    </message>
    <message>
      <source>Write the file and choose these rules for this inspection</source>
      <translation>Die Datei schreiben und diese Regeln für diese Prüfung wählen</translation>
    </message>
    <message>
      <source>Write the unit, lx or fc, so that it can be checked.</source>
      <translation>Die Einheit dazuschreiben, lx oder fc, damit es geprüft werden kann.</translation>
    </message>
    <message>
      <source>Write the unit, °C or °F, so that it can be checked.</source>
      <translation>Die Einheit dazuschreiben, °C oder °F, damit es geprüft werden kann.</translation>
    </message>
    <message>
      <source>Write the unit, µW/cm² or W/m², so that it can be checked.</source>
      <translation>Die Einheit dazuschreiben, µW/cm² oder W/m², damit es geprüft werden kann.</translation>
    </message>
    <message>
      <source>Writing bundles</source>
      <translation>Pakete werden geschrieben</translation>
    </message>
    <message>
      <source>Writing {0}</source>
      <translation>{0} wird geschrieben</translation>
    </message>
    <message>
      <source>Written instruction</source>
      <translation>Schriftliche Prüfanweisung</translation>
    </message>
    <message>
      <source>a drawing has a width above 0</source>
      <translation>eine Zeichnung hat eine Breite über 0</translation>
    </message>
    <message>
      <source>a drawing …</source>
      <translation>eine Zeichnung …</translation>
    </message>
    <message>
      <source>a number such as 30</source>
      <translation>eine Zahl wie 30</translation>
    </message>
    <message>
      <source>a photo of the record is not kept</source>
      <translation>ein Foto des Protokolls ist nicht aufbewahrt</translation>
    </message>
    <message>
      <source>a photo was changed</source>
      <translation>ein Foto wurde verändert</translation>
    </message>
    <message>
      <source>a pipe or bar is used alone</source>
      <translation>ein Rohr oder eine Stange wird allein verwendet</translation>
    </message>
    <message>
      <source>a scale</source>
      <translation>ein Maßstab</translation>
    </message>
    <message>
      <source>about {0:.1f} mm</source>
      <translation>etwa {0:.1f} mm</translation>
    </message>
    <message>
      <source>accept</source>
      <translation>annehmen</translation>
    </message>
    <message>
      <source>acceptable</source>
      <translation>zulässig</translation>
    </message>
    <message>
      <source>an outline cannot have a hole</source>
      <translation>ein Umriss kann kein Loch haben</translation>
    </message>
    <message>
      <source>and {0} more</source>
      <translation>und {0} weitere</translation>
    </message>
    <message>
      <source>and {0} older</source>
      <translation>und {0} ältere</translation>
    </message>
    <message>
      <source>any</source>
      <translation>beliebig</translation>
    </message>
    <message>
      <source>any relevance</source>
      <translation>jede Relevanz</translation>
    </message>
    <message>
      <source>any shape</source>
      <translation>jede Form</translation>
    </message>
    <message>
      <source>any verdict</source>
      <translation>jede Bewertung</translation>
    </message>
    <message>
      <source>as long as it stands</source>
      <translation>solange sie steht</translation>
    </message>
    <message>
      <source>as marked on the part</source>
      <translation>wie auf dem Teil</translation>
    </message>
    <message>
      <source>as on the order</source>
      <translation>wie im Auftrag</translation>
    </message>
    <message>
      <source>as welded, ground, machined, cast, forged …</source>
      <translation>geschweißt, geschliffen, bearbeitet, gegossen, geschmiedet …</translation>
    </message>
    <message>
      <source>at least</source>
      <translation>mindestens</translation>
    </message>
    <message>
      <source>at least {0:g} °C ({1})</source>
      <translation>mindestens {0:g} °C ({1})</translation>
    </message>
    <message>
      <source>at most</source>
      <translation>höchstens</translation>
    </message>
    <message>
      <source>at most {0:g} °C ({1})</source>
      <translation>höchstens {0:g} °C ({1})</translation>
    </message>
    <message>
      <source>batch number and expiry date</source>
      <translation>Chargennummer und Verfallsdatum</translation>
    </message>
    <message>
      <source>before or after heat treatment, repair …</source>
      <translation>vor oder nach Wärmebehandlung, Reparatur …</translation>
    </message>
    <message>
      <source>begin {0}</source>
      <translation>beginnen: {0}</translation>
    </message>
    <message>
      <source>belongs to no record</source>
      <translation>gehört zu keinem Protokoll</translation>
    </message>
    <message>
      <source>bottom left corner</source>
      <translation>Ecke unten links</translation>
    </message>
    <message>
      <source>bottom right corner</source>
      <translation>Ecke unten rechts</translation>
    </message>
    <message>
      <source>cannot be made</source>
      <translation>nicht möglich</translation>
    </message>
    <message>
      <source>cannot be read</source>
      <translation>nicht lesbar</translation>
    </message>
    <message>
      <source>card</source>
      <translation>Karte</translation>
    </message>
    <message>
      <source>changed</source>
      <translation>verändert</translation>
    </message>
    <message>
      <source>choose the criteria</source>
      <translation>Kriterien wählen</translation>
    </message>
    <message>
      <source>choose the decision rule</source>
      <translation>Entscheidungsregel wählen</translation>
    </message>
    <message>
      <source>choose …</source>
      <translation>wählen …</translation>
    </message>
    <message>
      <source>common practice</source>
      <translation>übliche Praxis</translation>
    </message>
    <message>
      <source>confirm what was kept</source>
      <translation>Übernommenes bestätigen</translation>
    </message>
    <message>
      <source>conforms with probability {0}</source>
      <translation>mit Wahrscheinlichkeit {0} eingehalten</translation>
    </message>
    <message>
      <source>contract, in service, after repair …</source>
      <translation>Vertrag, im Betrieb, nach Reparatur …</translation>
    </message>
    <message>
      <source>criteria {0}</source>
      <translation>Kriterien {0}</translation>
    </message>
    <message>
      <source>cropped, brightened …; or none</source>
      <translation>beschnitten, aufgehellt …; oder keine</translation>
    </message>
    <message>
      <source>cut {0}</source>
      <translation>{0} abschneiden</translation>
    </message>
    <message>
      <source>database {0}; photos {1}</source>
      <translation>Datenbank {0}; Fotos {1}</translation>
    </message>
    <message>
      <source>date of the near and colour vision check</source>
      <translation>Datum des Nahseh- und Farbsehtests</translation>
    </message>
    <message>
      <source>daylight, LED, …; colour temperature in K</source>
      <translation>Tageslicht, LED, …; Farbtemperatur in K</translation>
    </message>
    <message>
      <source>decide</source>
      <translation>entscheiden</translation>
    </message>
    <message>
      <source>delete the indication instead</source>
      <translation>stattdessen die Anzeige löschen</translation>
    </message>
    <message>
      <source>disposition missing</source>
      <translation>Entscheid fehlt</translation>
    </message>
    <message>
      <source>disposition {0}</source>
      <translation>Entscheid {0}</translation>
    </message>
    <message>
      <source>distance (mm) or clock position from the datum</source>
      <translation>Abstand (mm) oder Uhrzeitlage vom Bezugspunkt</translation>
    </message>
    <message>
      <source>distance (mm), support, angle to the surface</source>
      <translation>Abstand (mm), Halterung, Winkel zur Oberfläche</translation>
    </message>
    <message>
      <source>does not agree: look again</source>
      <translation>stimmt nicht überein: noch einmal ansehen</translation>
    </message>
    <message>
      <source>draw it from one side of the outline to the other</source>
      <translation>von einer Seite des Umrisses zur anderen zeichnen</translation>
    </message>
    <message>
      <source>draw it round what is to go</source>
      <translation>um das zeichnen, was weg soll</translation>
    </message>
    <message>
      <source>draw the loop over the outline's edge</source>
      <translation>die Schleife über den Rand des Umrisses zeichnen</translation>
    </message>
    <message>
      <source>dropped</source>
      <translation>verworfen</translation>
    </message>
    <message>
      <source>dry, water-based, solvent-based (nonaqueous wet)</source>
      <translation>trocken, auf Wasserbasis, auf Lösemittelbasis (Nassentwickler)</translation>
    </message>
    <message>
      <source>edge</source>
      <translation>Kante</translation>
    </message>
    <message>
      <source>edit its points</source>
      <translation>seine Punkte ändern</translation>
    </message>
    <message>
      <source>edit its points first</source>
      <translation>zuerst seine Punkte ändern</translation>
    </message>
    <message>
      <source>edit the points of</source>
      <translation>Punkte ändern von</translation>
    </message>
    <message>
      <source>empty what was kept</source>
      <translation>Übernommenes leeren</translation>
    </message>
    <message>
      <source>end of the weld</source>
      <translation>Ende der Schweißnaht</translation>
    </message>
    <message>
      <source>end {0}</source>
      <translation>beenden: {0}</translation>
    </message>
    <message>
      <source>every record</source>
      <translation>jedes Protokoll</translation>
    </message>
    <message>
      <source>examine the whole photo</source>
      <translation>das ganze Foto prüfen</translation>
    </message>
    <message>
      <source>examined from {0}</source>
      <translation>geprüft ab {0}</translation>
    </message>
    <message>
      <source>examined up to {0}</source>
      <translation>geprüft bis {0}</translation>
    </message>
    <message>
      <source>examiner</source>
      <translation>Prüfer</translation>
    </message>
    <message>
      <source>examiner {0}</source>
      <translation>Prüfer {0}</translation>
    </message>
    <message>
      <source>exchange the two</source>
      <translation>die beiden tauschen</translation>
    </message>
    <message>
      <source>false</source>
      <translation>Scheinanzeige</translation>
    </message>
    <message>
      <source>fill in {0}</source>
      <translation>ausfüllen: {0}</translation>
    </message>
    <message>
      <source>first end</source>
      <translation>erstes Ende</translation>
    </message>
    <message>
      <source>first end of a line across the outline</source>
      <translation>erstes Ende einer Linie quer über den Umriss</translation>
    </message>
    <message>
      <source>first end of the first line</source>
      <translation>erstes Ende der ersten Linie</translation>
    </message>
    <message>
      <source>first end of the second line</source>
      <translation>erstes Ende der zweiten Linie</translation>
    </message>
    <message>
      <source>first only</source>
      <translation>nur der Erste</translation>
    </message>
    <message>
      <source>first point of a line along the pipe</source>
      <translation>erster Punkt einer Linie längs des Rohrs</translation>
    </message>
    <message>
      <source>first point of the line where it touches the pipe</source>
      <translation>erster Punkt der Linie, in der es das Rohr berührt</translation>
    </message>
    <message>
      <source>first point of the line where the card touches the pipe</source>
      <translation>erster Punkt der Linie, in der die Karte das Rohr berührt</translation>
    </message>
    <message>
      <source>first point on one outer edge</source>
      <translation>erster Punkt auf einer äußeren Kante</translation>
    </message>
    <message>
      <source>first point on the other edge</source>
      <translation>erster Punkt auf der anderen Kante</translation>
    </message>
    <message>
      <source>focal length</source>
      <translation>Brennweite</translation>
    </message>
    <message>
      <source>from the material certificate</source>
      <translation>aus dem Werkstoffzeugnis</translation>
    </message>
    <message>
      <source>from the procedure, with who agreed; or none</source>
      <translation>aus dem Verfahren, mit wem vereinbart; oder keine</translation>
    </message>
    <message>
      <source>give it as 2026-03-31</source>
      <translation>so angeben: 2026-03-31</translation>
    </message>
    <message>
      <source>give the reason</source>
      <translation>den Grund angeben</translation>
    </message>
    <message>
      <source>give the reason for</source>
      <translation>den Grund angeben für</translation>
    </message>
    <message>
      <source>give the reason for {0}</source>
      <translation>den Grund angeben: {0}</translation>
    </message>
    <message>
      <source>grade</source>
      <translation>Sorte</translation>
    </message>
    <message>
      <source>hand</source>
      <translation>Hand</translation>
    </message>
    <message>
      <source>hold</source>
      <translation>Sperre</translation>
    </message>
    <message>
      <source>in the archive</source>
      <translation>im Archiv</translation>
    </message>
    <message>
      <source>in the order they were examined</source>
      <translation>in der Reihenfolge der Prüfung</translation>
    </message>
    <message>
      <source>instrument number and calibration due date</source>
      <translation>Gerätenummer und Datum der nächsten Kalibrierung</translation>
    </message>
    <message>
      <source>instrument number, where the procedure asks for it</source>
      <translation>Gerätenummer, wo das Verfahren sie verlangt</translation>
    </message>
    <message>
      <source>is not signed by its examiner yet, so it cannot be reviewed.</source>
      <translation>ist von seinem Prüfer noch nicht unterschrieben und kann nicht gegengeprüft werden.</translation>
    </message>
    <message>
      <source>is reviewed.</source>
      <translation>ist gegengeprüft.</translation>
    </message>
    <message>
      <source>it was not printed: {0}</source>
      <translation>es wurde nicht gedruckt: {0}</translation>
    </message>
    <message>
      <source>its second end</source>
      <translation>ihr zweites Ende</translation>
    </message>
    <message>
      <source>join {0}</source>
      <translation>{0} verbinden</translation>
    </message>
    <message>
      <source>kept from an earlier inspection</source>
      <translation>von einer früheren Prüfung übernommen</translation>
    </message>
    <message>
      <source>kind {0}</source>
      <translation>Art {0}</translation>
    </message>
    <message>
      <source>left out</source>
      <translation>ausgelassen</translation>
    </message>
    <message>
      <source>length from {0}</source>
      <translation>Länge von {0}</translation>
    </message>
    <message>
      <source>length up to {0}</source>
      <translation>Länge bis {0}</translation>
    </message>
    <message>
      <source>lens</source>
      <translation>Objektiv</translation>
    </message>
    <message>
      <source>less than</source>
      <translation>weniger als</translation>
    </message>
    <message>
      <source>level, class or paragraph the contract names</source>
      <translation>Stufe, Klasse oder Absatz, den der Vertrag nennt</translation>
    </message>
    <message>
      <source>lies on the surface; else such as 1.5 mm above it</source>
      <translation>liegt auf der Oberfläche; sonst etwa 1,5 mm darüber</translation>
    </message>
    <message>
      <source>line</source>
      <translation>Linie</translation>
    </message>
    <message>
      <source>line on a pipe</source>
      <translation>Linie auf einem Rohr</translation>
    </message>
    <message>
      <source>linear</source>
      <translation>linear</translation>
    </message>
    <message>
      <source>look at the printer, or open the file and print it there</source>
      <translation>nach dem Drucker sehen oder die Datei öffnen und dort drucken</translation>
    </message>
    <message>
      <source>looking …</source>
      <translation>sucht …</translation>
    </message>
    <message>
      <source>lx or fc at the surface; fluorescent: what light is left</source>
      <translation>lx oder fc an der Oberfläche; fluoreszierend: welches Licht bleibt</translation>
    </message>
    <message>
      <source>maker and product</source>
      <translation>Hersteller und Produkt</translation>
    </message>
    <message>
      <source>maker and product, where one is used</source>
      <translation>Hersteller und Produkt, wo verwendet</translation>
    </message>
    <message>
      <source>map</source>
      <translation>Abbildung</translation>
    </message>
    <message>
      <source>mark a line of the part</source>
      <translation>Linie am Teil markieren</translation>
    </message>
    <message>
      <source>mark the examined area</source>
      <translation>den Prüfbereich markieren</translation>
    </message>
    <message>
      <source>mark the weld</source>
      <translation>die Schweißnaht markieren</translation>
    </message>
    <message>
      <source>method, and drying time in min</source>
      <translation>Art und Trockenzeit in min</translation>
    </message>
    <message>
      <source>method, and time in min</source>
      <translation>Art und Zeit in min</translation>
    </message>
    <message>
      <source>method, such as cloth moistened with solvent</source>
      <translation>Art, etwa mit lösemittelfeuchtem Tuch</translation>
    </message>
    <message>
      <source>method; protection against corrosion</source>
      <translation>Art; Schutz gegen Korrosion</translation>
    </message>
    <message>
      <source>min</source>
      <translation>min</translation>
    </message>
    <message>
      <source>min, from when the developer was dry</source>
      <translation>min, ab trockenem Entwickler</translation>
    </message>
    <message>
      <source>missing</source>
      <translation>fehlt</translation>
    </message>
    <message>
      <source>mm / in</source>
      <translation>mm / in</translation>
    </message>
    <message>
      <source>mm or in, with the unit</source>
      <translation>mm oder in, mit Einheit</translation>
    </message>
    <message>
      <source>mm or in, with the unit, at the examined area</source>
      <translation>mm oder in, mit Einheit, im Prüfbereich</translation>
    </message>
    <message>
      <source>more than</source>
      <translation>mehr als</translation>
    </message>
    <message>
      <source>name</source>
      <translation>Name</translation>
    </message>
    <message>
      <source>name of this search</source>
      <translation>Name dieser Suche</translation>
    </message>
    <message>
      <source>name, or its beginning with *</source>
      <translation>Name, oder sein Anfang mit *</translation>
    </message>
    <message>
      <source>name, where witnessed</source>
      <translation>Name, wo jemand dabei war</translation>
    </message>
    <message>
      <source>needed where it departs from the verdict</source>
      <translation>nötig, wo er von der Bewertung abweicht</translation>
    </message>
    <message>
      <source>needed: until there is one, it is judged</source>
      <translation>nötig: ohne ihn wird sie bewertet</translation>
    </message>
    <message>
      <source>needs a new photo. Take it as the remarks say, go on with the record, add the photo, measure, take the old one out, save with the reason, and sign again.</source>
      <translation>braucht ein neues Foto. Es aufnehmen, wie die Bemerkungen sagen, mit dem Protokoll weitermachen, das Foto hinzufügen, messen, das alte herausnehmen, mit dem Grund speichern und wieder unterschreiben.</translation>
    </message>
    <message>
      <source>needs a scale</source>
      <translation>braucht einen Maßstab</translation>
    </message>
    <message>
      <source>needs photo</source>
      <translation>braucht Foto</translation>
    </message>
    <message>
      <source>newest first</source>
      <translation>neueste zuerst</translation>
    </message>
    <message>
      <source>no disposition</source>
      <translation>kein Entscheid</translation>
    </message>
    <message>
      <source>no indications</source>
      <translation>keine Anzeigen</translation>
    </message>
    <message>
      <source>no length</source>
      <translation>keine Länge</translation>
    </message>
    <message>
      <source>no limit</source>
      <translation>keine Grenze</translation>
    </message>
    <message>
      <source>no match</source>
      <translation>kein Gegenstück</translation>
    </message>
    <message>
      <source>no outline to work on</source>
      <translation>kein Umriss zum Bearbeiten</translation>
    </message>
    <message>
      <source>no part number</source>
      <translation>keine Teilenummer</translation>
    </message>
    <message>
      <source>no photo yet</source>
      <translation>noch kein Foto</translation>
    </message>
    <message>
      <source>no scale</source>
      <translation>kein Maßstab</translation>
    </message>
    <message>
      <source>no scale yet</source>
      <translation>noch kein Maßstab</translation>
    </message>
    <message>
      <source>no scale, nothing marked</source>
      <translation>kein Maßstab, nichts markiert</translation>
    </message>
    <message>
      <source>no serial</source>
      <translation>keine Seriennummer</translation>
    </message>
    <message>
      <source>no size</source>
      <translation>keine Größe</translation>
    </message>
    <message>
      <source>no verdict</source>
      <translation>keine Bewertung</translation>
    </message>
    <message>
      <source>non-relevant</source>
      <translation>nicht relevant (Grund)</translation>
    </message>
    <message>
      <source>none</source>
      <translation>keine</translation>
    </message>
    <message>
      <source>none found</source>
      <translation>keine gefunden</translation>
    </message>
    <message>
      <source>none yet</source>
      <translation>noch nichts</translation>
    </message>
    <message>
      <source>not all judged</source>
      <translation>nicht alle bewertet</translation>
    </message>
    <message>
      <source>not calibrated</source>
      <translation>nicht kalibriert</translation>
    </message>
    <message>
      <source>not decided</source>
      <translation>nicht entschieden</translation>
    </message>
    <message>
      <source>not decided yet</source>
      <translation>noch nicht entschieden</translation>
    </message>
    <message>
      <source>not given</source>
      <translation>nicht angegeben</translation>
    </message>
    <message>
      <source>not given: 0 to 2 mm is assumed</source>
      <translation>nicht angegeben: 0 bis 2 mm angenommen</translation>
    </message>
    <message>
      <source>not looked at</source>
      <translation>nicht angesehen</translation>
    </message>
    <message>
      <source>not measured</source>
      <translation>nicht gemessen</translation>
    </message>
    <message>
      <source>not measured yet</source>
      <translation>noch nicht gemessen</translation>
    </message>
    <message>
      <source>not readable</source>
      <translation>nicht lesbar</translation>
    </message>
    <message>
      <source>not relevant</source>
      <translation>nicht relevant</translation>
    </message>
    <message>
      <source>not signed</source>
      <translation>nicht unterschrieben</translation>
    </message>
    <message>
      <source>not timed</source>
      <translation>nicht gemessen</translation>
    </message>
    <message>
      <source>not told by the file</source>
      <translation>steht nicht in der Datei</translation>
    </message>
    <message>
      <source>note on</source>
      <translation>Notiz zu</translation>
    </message>
    <message>
      <source>nothing</source>
      <translation>nichts</translation>
    </message>
    <message>
      <source>nothing changes</source>
      <translation>nichts ändert sich</translation>
    </message>
    <message>
      <source>nothing of the outline would be left</source>
      <translation>vom Umriss bliebe nichts übrig</translation>
    </message>
    <message>
      <source>number</source>
      <translation>Nummer</translation>
    </message>
    <message>
      <source>number and issue</source>
      <translation>Nummer und Ausgabe</translation>
    </message>
    <message>
      <source>number and revision, where there is one</source>
      <translation>Nummer und Revision, wo vorhanden</translation>
    </message>
    <message>
      <source>on its own surface.</source>
      <translation>auf seiner eigenen Oberfläche.</translation>
    </message>
    <message>
      <source>one outline cannot be joined</source>
      <translation>ein einzelner Umriss kann nicht verbunden werden</translation>
    </message>
    <message>
      <source>only records placed by hand</source>
      <translation>nur von Hand gelegte Protokolle</translation>
    </message>
    <message>
      <source>open a photo first</source>
      <translation>zuerst ein Foto öffnen</translation>
    </message>
    <message>
      <source>open the record and review it anew</source>
      <translation>das Protokoll öffnen und neu gegenprüfen</translation>
    </message>
    <message>
      <source>optional, such as 80.05 mm</source>
      <translation>freiwillig, etwa 80,05 mm</translation>
    </message>
    <message>
      <source>other end of the weld</source>
      <translation>anderes Ende der Schweißnaht</translation>
    </message>
    <message>
      <source>other end, beyond the outline</source>
      <translation>anderes Ende, jenseits des Umrisses</translation>
    </message>
    <message>
      <source>others</source>
      <translation>übrige</translation>
    </message>
    <message>
      <source>own only</source>
      <translation>nur eigene</translation>
    </message>
    <message>
      <source>part number {0}</source>
      <translation>Teilenummer {0}</translation>
    </message>
    <message>
      <source>part {0}, </source>
      <translation>Teil {0}, </translation>
    </message>
    <message>
      <source>photo and lists</source>
      <translation>Foto und Listen</translation>
    </message>
    <message>
      <source>photo of the newest record</source>
      <translation>Foto des neuesten Protokolls</translation>
    </message>
    <message>
      <source>photo {0}</source>
      <translation>Foto {0}</translation>
    </message>
    <message>
      <source>photo {0} of {1} is not measured yet</source>
      <translation>Foto {0} von {1} ist noch nicht gemessen</translation>
    </message>
    <message>
      <source>photo {0}: </source>
      <translation>Foto {0}: </translation>
    </message>
    <message>
      <source>photo {0}: {1}</source>
      <translation>Foto {0}: {1}</translation>
    </message>
    <message>
      <source>picking</source>
      <translation>Punkte</translation>
    </message>
    <message>
      <source>pipe</source>
      <translation>Rohr</translation>
    </message>
    <message>
      <source>points are missing</source>
      <translation>es fehlen Punkte</translation>
    </message>
    <message>
      <source>press another one, or change that one first</source>
      <translation>eine andere drücken oder zuerst jene ändern</translation>
    </message>
    <message>
      <source>press the key that is to be used</source>
      <translation>die gewünschte Taste drücken</translation>
    </message>
    <message>
      <source>procedure {0}</source>
      <translation>Verfahren {0}</translation>
    </message>
    <message>
      <source>record {0}</source>
      <translation>Protokoll {0}</translation>
    </message>
    <message>
      <source>rectangle</source>
      <translation>Rechteck</translation>
    </message>
    <message>
      <source>refer</source>
      <translation>weiterleiten</translation>
    </message>
    <message>
      <source>reference</source>
      <translation>Referenz</translation>
    </message>
    <message>
      <source>reference block number, date, result</source>
      <translation>Nummer des Vergleichskörpers, Datum, Ergebnis</translation>
    </message>
    <message>
      <source>refused</source>
      <translation>abgelehnt</translation>
    </message>
    <message>
      <source>reject</source>
      <translation>zurückweisen</translation>
    </message>
    <message>
      <source>rejectable</source>
      <translation>nicht zulässig</translation>
    </message>
    <message>
      <source>rejected {0:.0%}</source>
      <translation>zurückgewiesen {0:.0%}</translation>
    </message>
    <message>
      <source>relevance</source>
      <translation>Relevanz</translation>
    </message>
    <message>
      <source>relevant</source>
      <translation>relevant</translation>
    </message>
    <message>
      <source>relevant as the criteria have it</source>
      <translation>relevant nach den Kriterien</translation>
    </message>
    <message>
      <source>relief</source>
      <translation>Relief</translation>
    </message>
    <message>
      <source>remark {0}</source>
      <translation>Bemerkung {0}</translation>
    </message>
    <message>
      <source>remove a line of the part</source>
      <translation>Linie am Teil entfernen</translation>
    </message>
    <message>
      <source>remove the scale</source>
      <translation>den Maßstab entfernen</translation>
    </message>
    <message>
      <source>repair it: ptmark archive repair</source>
      <translation>reparieren: ptmark archive repair</translation>
    </message>
    <message>
      <source>result, and the number of its report</source>
      <translation>Ergebnis und Nummer seines Berichts</translation>
    </message>
    <message>
      <source>returned</source>
      <translation>zurückgegeben</translation>
    </message>
    <message>
      <source>review of {0}</source>
      <translation>Gegenprüfung von {0}</translation>
    </message>
    <message>
      <source>review: {0}</source>
      <translation>Gegenprüfung: {0}</translation>
    </message>
    <message>
      <source>reviewer</source>
      <translation>Gegenprüfer</translation>
    </message>
    <message>
      <source>revision or date</source>
      <translation>Revision oder Datum</translation>
    </message>
    <message>
      <source>revision {0}</source>
      <translation>Fassung {0}</translation>
    </message>
    <message>
      <source>rework and retest</source>
      <translation>nacharbeiten und wieder prüfen</translation>
    </message>
    <message>
      <source>rounded</source>
      <translation>nichtlinear</translation>
    </message>
    <message>
      <source>row {0}: </source>
      <translation>Zeile {0}: </translation>
    </message>
    <message>
      <source>rule</source>
      <translation>Regel</translation>
    </message>
    <message>
      <source>sampling</source>
      <translation>Abtastung</translation>
    </message>
    <message>
      <source>save it, then sign</source>
      <translation>speichern, dann unterschreiben</translation>
    </message>
    <message>
      <source>saved as {0}</source>
      <translation>gespeichert als {0}</translation>
    </message>
    <message>
      <source>scale missing</source>
      <translation>Maßstab fehlt</translation>
    </message>
    <message>
      <source>scheme, level, number, expiry</source>
      <translation>Programm, Stufe, Nummer, Ablauf</translation>
    </message>
    <message>
      <source>scheme, method and level, number</source>
      <translation>Programm, Verfahren und Stufe, Nummer</translation>
    </message>
    <message>
      <source>second end</source>
      <translation>zweites Ende</translation>
    </message>
    <message>
      <source>second point of that line, far along the pipe</source>
      <translation>zweiter Punkt dieser Linie, weit längs des Rohrs</translation>
    </message>
    <message>
      <source>second point on that edge, far from it</source>
      <translation>zweiter Punkt auf dieser Kante, weit davon</translation>
    </message>
    <message>
      <source>second point on the other edge</source>
      <translation>zweiter Punkt auf der anderen Kante</translation>
    </message>
    <message>
      <source>second point, far along it</source>
      <translation>zweiter Punkt, weit längs davon</translation>
    </message>
    <message>
      <source>seen in this photo only</source>
      <translation>nur in diesem Foto gesehen</translation>
    </message>
    <message>
      <source>select two or more</source>
      <translation>zwei oder mehr wählen</translation>
    </message>
    <message>
      <source>serial {0}</source>
      <translation>Seriennummer {0}</translation>
    </message>
    <message>
      <source>set aside</source>
      <translation>beiseitelegen</translation>
    </message>
    <message>
      <source>set the height</source>
      <translation>die Höhe setzen</translation>
    </message>
    <message>
      <source>set the {0}</source>
      <translation>setzen: {0}</translation>
    </message>
    <message>
      <source>shape</source>
      <translation>Form</translation>
    </message>
    <message>
      <source>shape {0}</source>
      <translation>Form {0}</translation>
    </message>
    <message>
      <source>signed</source>
      <translation>unterschrieben</translation>
    </message>
    <message>
      <source>site, shop or bay</source>
      <translation>Baustelle, Werk oder Halle</translation>
    </message>
    <message>
      <source>smooth {0}</source>
      <translation>{0} glätten</translation>
    </message>
    <message>
      <source>split {0}</source>
      <translation>{0} teilen</translation>
    </message>
    <message>
      <source>spray, brush, immersion …</source>
      <translation>Sprühen, Streichen, Tauchen …</translation>
    </message>
    <message>
      <source>spray, dust, immersion …</source>
      <translation>Sprühen, Stäuben, Tauchen …</translation>
    </message>
    <message>
      <source>stale, judge again</source>
      <translation>überholt, neu bewerten</translation>
    </message>
    <message>
      <source>standard or code with its edition</source>
      <translation>Norm oder Regelwerk mit Ausgabe</translation>
    </message>
    <message>
      <source>start the retest of {0}</source>
      <translation>die Wiederholungsprüfung zu {0} beginnen</translation>
    </message>
    <message>
      <source>such as 150 mm or 6 in</source>
      <translation>etwa 150 mm oder 6 in</translation>
    </message>
    <message>
      <source>such as ISO 3452-1, II C e, level 2</source>
      <translation>etwa ISO 3452-1, II C e, Empfindlichkeit 2</translation>
    </message>
    <message>
      <source>sulphur and halogens, certificate number</source>
      <translation>Schwefel und Halogene, Nummer der Bescheinigung</translation>
    </message>
    <message>
      <source>take all suggestions</source>
      <translation>alle Vorschläge übernehmen</translation>
    </message>
    <message>
      <source>take over the last inspection</source>
      <translation>die letzte Prüfung übernehmen</translation>
    </message>
    <message>
      <source>take the link to the earlier record away</source>
      <translation>die Verbindung zum früheren Protokoll lösen</translation>
    </message>
    <message>
      <source>taken</source>
      <translation>übernommen</translation>
    </message>
    <message>
      <source>that is no key</source>
      <translation>das ist keine Taste</translation>
    </message>
    <message>
      <source>the criteria</source>
      <translation>die Kriterien</translation>
    </message>
    <message>
      <source>the examined area</source>
      <translation>den Prüfbereich</translation>
    </message>
    <message>
      <source>the least uncertain; the longest where they do not agree</source>
      <translation>die am wenigsten unsichere; die längste, wo sie nicht übereinstimmen</translation>
    </message>
    <message>
      <source>the line does not cross the outline</source>
      <translation>die Linie kreuzt den Umriss nicht</translation>
    </message>
    <message>
      <source>the line “{0}” of the part</source>
      <translation>der Linie „{0}“ am Teil</translation>
    </message>
    <message>
      <source>the loop lies beside the outline</source>
      <translation>die Schleife liegt neben dem Umriss</translation>
    </message>
    <message>
      <source>the outline crosses itself</source>
      <translation>der Umriss kreuzt sich selbst</translation>
    </message>
    <message>
      <source>the outline encloses less than one pixel</source>
      <translation>der Umriss umschließt weniger als ein Pixel</translation>
    </message>
    <message>
      <source>the outline is too fine to be smoothed</source>
      <translation>der Umriss ist zu fein zum Glätten</translation>
    </message>
    <message>
      <source>the photo cannot be read: verify the archive</source>
      <translation>das Foto ist nicht lesbar: das Archiv prüfen</translation>
    </message>
    <message>
      <source>the point or line that positions are taken from</source>
      <translation>Punkt oder Linie, von der aus Lagen zählen</translation>
    </message>
    <message>
      <source>the record is not saved as it stands</source>
      <translation>das Protokoll ist nicht gespeichert, wie es steht</translation>
    </message>
    <message>
      <source>the review in it does not fit: {0!r}</source>
      <translation>die Gegenprüfung darin passt nicht: {0!r}</translation>
    </message>
    <message>
      <source>the {0} is not named</source>
      <translation>nicht benannt: {0}</translation>
    </message>
    <message>
      <source>there is no photo yet</source>
      <translation>es gibt noch kein Foto</translation>
    </message>
    <message>
      <source>thickness</source>
      <translation>Dicke</translation>
    </message>
    <message>
      <source>this photo</source>
      <translation>dieses Foto</translation>
    </message>
    <message>
      <source>tilt</source>
      <translation>Neigung</translation>
    </message>
    <message>
      <source>time of day, hh:mm</source>
      <translation>Uhrzeit, hh:mm</translation>
    </message>
    <message>
      <source>time of day, hh:mm; the photo's own time if not this</source>
      <translation>Uhrzeit, hh:mm; die des Fotos, wenn nicht diese</translation>
    </message>
    <message>
      <source>to</source>
      <translation>bis</translation>
    </message>
    <message>
      <source>to look at</source>
      <translation>anzusehen</translation>
    </message>
    <message>
      <source>to review</source>
      <translation>gegenzuprüfen</translation>
    </message>
    <message>
      <source>too early</source>
      <translation>zu früh</translation>
    </message>
    <message>
      <source>too late</source>
      <translation>zu spät</translation>
    </message>
    <message>
      <source>top left corner</source>
      <translation>Ecke oben links</translation>
    </message>
    <message>
      <source>top right corner</source>
      <translation>Ecke oben rechts</translation>
    </message>
    <message>
      <source>touching line</source>
      <translation>Berührlinie</translation>
    </message>
    <message>
      <source>turn to it (Ctrl+PgDown), or add it again</source>
      <translation>zu ihm wechseln (Strg+Bild↓) oder es neu hinzufügen</translation>
    </message>
    <message>
      <source>two lines</source>
      <translation>zwei Linien</translation>
    </message>
    <message>
      <source>two photos</source>
      <translation>zwei Fotos</translation>
    </message>
    <message>
      <source>type a name first</source>
      <translation>zuerst einen Namen eingeben</translation>
    </message>
    <message>
      <source>type a number, or “none” for no limit, or nothing for the standard's</source>
      <translation>eine Zahl eingeben, „none“ für keine Grenze oder nichts für die der Norm</translation>
    </message>
    <message>
      <source>typed here</source>
      <translation>hier eingegeben</translation>
    </message>
    <message>
      <source>undecided</source>
      <translation>unentschieden</translation>
    </message>
    <message>
      <source>under review. Both stand side by side in step 5; sign, return or ask there.</source>
      <translation>in Gegenprüfung. In Schritt 5 stehen beide nebeneinander; dort unterschreiben, zurückgeben oder anfordern.</translation>
    </message>
    <message>
      <source>under review. Measure it yourself; the first numbers are hidden.</source>
      <translation>in Gegenprüfung. Selbst messen; die ersten Werte sind verborgen.</translation>
    </message>
    <message>
      <source>unmark the weld</source>
      <translation>Markierung der Naht entfernen</translation>
    </message>
    <message>
      <source>verdict</source>
      <translation>Bewertung</translation>
    </message>
    <message>
      <source>verdict {0}</source>
      <translation>Bewertung {0}</translation>
    </message>
    <message>
      <source>visible (colour contrast); sensitivity level</source>
      <translation>sichtbar (Farbkontrast); Empfindlichkeit</translation>
    </message>
    <message>
      <source>waits for a review.</source>
      <translation>wartet auf eine Gegenprüfung.</translation>
    </message>
    <message>
      <source>was changed since the review was begun</source>
      <translation>wurde geändert, seit die Gegenprüfung begann</translation>
    </message>
    <message>
      <source>was returned. Do what the remarks say, save it over the record with the reason, and sign it again; it is then reviewed anew.</source>
      <translation>wurde zurückgegeben. Tun, was die Bemerkungen sagen, mit dem Grund über das Protokoll speichern und wieder unterschreiben; dann wird es neu gegengeprüft.</translation>
    </message>
    <message>
      <source>was reviewed and signed.</source>
      <translation>wurde gegengeprüft und unterschrieben.</translation>
    </message>
    <message>
      <source>water, solvent, emulsifier (lipo- or hydrophilic)</source>
      <translation>Wasser, Lösemittel, Emulgator (lipo- oder hydrophil)</translation>
    </message>
    <message>
      <source>weld or joint, as on the weld map</source>
      <translation>Naht oder Verbindung, wie im Nahtplan</translation>
    </message>
    <message>
      <source>weld, {0}</source>
      <translation>Naht, {0}</translation>
    </message>
    <message>
      <source>what could not be examined, and why</source>
      <translation>was nicht geprüft werden konnte und warum</translation>
    </message>
    <message>
      <source>what is to be cut off</source>
      <translation>was abgeschnitten werden soll</translation>
    </message>
    <message>
      <source>what it is, such as nozzle weld</source>
      <translation>was es ist, etwa Stutzennaht</translation>
    </message>
    <message>
      <source>what was done, or is to be done</source>
      <translation>was getan wurde oder zu tun ist</translation>
    </message>
    <message>
      <source>what was seen to be resolved, such as 0.1 mm</source>
      <translation>was aufgelöst zu sehen war, etwa 0,1 mm</translation>
    </message>
    <message>
      <source>where a rule needs it, such as 300 mm</source>
      <translation>wo eine Regel sie braucht</translation>
    </message>
    <message>
      <source>where, and how much of the part</source>
      <translation>wo und wie viel des Teils</translation>
    </message>
    <message>
      <source>whole window</source>
      <translation>ganzes Fenster</translation>
    </message>
    <message>
      <source>why all the same; it goes into the deviations</source>
      <translation>warum dennoch; geht in die Abweichungen</translation>
    </message>
    <message>
      <source>why; it goes into the deviations</source>
      <translation>warum; geht in die Abweichungen</translation>
    </message>
    <message>
      <source>wipe-offs and second looks, with their times</source>
      <translation>Abwischen und zweite Betrachtungen, mit ihren Zeiten</translation>
    </message>
    <message>
      <source>within the limits</source>
      <translation>innerhalb der Grenzen</translation>
    </message>
    <message>
      <source>without the place in photos</source>
      <translation>ohne den Ort in den Fotos</translation>
    </message>
    <message>
      <source>words {0}</source>
      <translation>Wörter {0}</translation>
    </message>
    <message>
      <source>work</source>
      <translation>Arbeit</translation>
    </message>
    <message>
      <source>write it as 0, 0</source>
      <translation>als 0, 0 schreiben</translation>
    </message>
    <message>
      <source>x {0:g} to {1:g} mm, y {2:g} to {3:g} mm, down</source>
      <translation>x {0:g} bis {1:g} mm, y {2:g} bis {3:g} mm, nach unten</translation>
    </message>
    <message>
      <source>x {0:g} to {1:g} mm, y {2:g} to {3:g} mm: {4} records</source>
      <translation>x {0:g} bis {1:g} mm, y {2:g} bis {3:g} mm: {4} Protokolle</translation>
    </message>
    <message>
      <source>year-month-day</source>
      <translation>Jahr-Monat-Tag</translation>
    </message>
    <message>
      <source>your review</source>
      <translation>die eigene Gegenprüfung</translation>
    </message>
    <message>
      <source>{0:,} records</source>
      <translation>{0:,} Protokolle</translation>
    </message>
    <message>
      <source>{0:.0f} px</source>
      <translation>{0:.0f} px</translation>
    </message>
    <message>
      <source>{0:.1f}, {1:.1f} px</source>
      <translation>{0:.1f}; {1:.1f} px</translation>
    </message>
    <message>
      <source>{0:g} mm</source>
      <translation>{0:g} mm</translation>
    </message>
    <message>
      <source>{0:g} to {1:g} min.</source>
      <translation>{0:g} bis {1:g} min.</translation>
    </message>
    <message>
      <source>{0:g} to {1:g} °C ({2})</source>
      <translation>{0:g} bis {1:g} °C ({2})</translation>
    </message>
    <message>
      <source>{0:g} years</source>
      <translation>{0:g} Jahre</translation>
    </message>
    <message>
      <source>{0} (as usual)</source>
      <translation>{0} (wie üblich)</translation>
    </message>
    <message>
      <source>{0} (cannot be used)</source>
      <translation>{0} (nicht zu gebrauchen)</translation>
    </message>
    <message>
      <source>{0} (changed)</source>
      <translation>{0} (geändert)</translation>
    </message>
    <message>
      <source>{0} (may be left out)</source>
      <translation>{0} (kann fehlen)</translation>
    </message>
    <message>
      <source>{0} (once)</source>
      <translation>{0} (einmal)</translation>
    </message>
    <message>
      <source>{0} (to be filled in)</source>
      <translation>{0} (auszufüllen)</translation>
    </message>
    <message>
      <source>{0} (your own)</source>
      <translation>{0} (eigenes)</translation>
    </message>
    <message>
      <source>{0} ({1} records)</source>
      <translation>{0} ({1} Protokolle)</translation>
    </message>
    <message>
      <source>{0} All are as they were taken in.</source>
      <translation>{0} Alle sind, wie sie aufgenommen wurden.</translation>
    </message>
    <message>
      <source>{0} All are as they were taken in. What is listed below belongs to no record; that is no loss.</source>
      <translation>{0} Alle sind, wie sie aufgenommen wurden. Was unten steht, gehört zu keinem Protokoll; das ist kein Verlust.</translation>
    </message>
    <message>
      <source>{0} All photos together: {1}.</source>
      <translation>{0} Alle Fotos zusammen: {1}.</translation>
    </message>
    <message>
      <source>{0} All together: no verdict, photo {1} is not judged.</source>
      <translation>{0} Zusammen: keine Bewertung, Foto {1} ist nicht bewertet.</translation>
    </message>
    <message>
      <source>{0} and {1}</source>
      <translation>{0} und {1}</translation>
    </message>
    <message>
      <source>{0} at {1:.5f}, {2:.5f}</source>
      <translation>{0} bei {1:.5f}; {2:.5f}</translation>
    </message>
    <message>
      <source>{0} by {1}; key {2}</source>
      <translation>{0} von {1}; Schlüssel {2}</translation>
    </message>
    <message>
      <source>{0} fields missing</source>
      <translation>{0} Felder fehlen</translation>
    </message>
    <message>
      <source>{0} from the next start on.</source>
      <translation>{0} ab dem nächsten Start.</translation>
    </message>
    <message>
      <source>{0} hidden by the filter; the verdict counts them.</source>
      <translation>{0} vom Filter verborgen; die Bewertung zählt sie mit.</translation>
    </message>
    <message>
      <source>{0} indications</source>
      <translation>{0} Anzeigen</translation>
    </message>
    <message>
      <source>{0} indications of {1} records; darkest: {2} records in a cell.</source>
      <translation>{0} Anzeigen aus {1} Protokollen; am dunkelsten: {2} Protokolle in einer Zelle.</translation>
    </message>
    <message>
      <source>{0} is the key of “{1}” already</source>
      <translation>{0} ist schon die Taste von „{1}“</translation>
    </message>
    <message>
      <source>{0} it is.</source>
      <translation>{0} ist es.</translation>
    </message>
    <message>
      <source>{0} more, less like dye …</source>
      <translation>{0} weitere, der Farbe weniger ähnlich …</translation>
    </message>
    <message>
      <source>{0} of {1} lines change</source>
      <translation>{0} von {1} Zeilen ändern sich</translation>
    </message>
    <message>
      <source>{0} of {1} records and photos</source>
      <translation>{0} von {1} Protokollen und Fotos</translation>
    </message>
    <message>
      <source>{0} of {1} to look at: take or drop each. Arrow keys go on.</source>
      <translation>{0} von {1} anzusehen: jede übernehmen oder verwerfen. Pfeiltasten gehen weiter.</translation>
    </message>
    <message>
      <source>{0} of {1}, </source>
      <translation>{0} von {1}, </translation>
    </message>
    <message>
      <source>{0} photos fit one lens to {1:.2f} px.</source>
      <translation>{0} Fotos passen auf {1:.2f} px zu einem Objektiv.</translation>
    </message>
    <message>
      <source>{0} records and {1} photos were read again.</source>
      <translation>{0} Protokolle und {1} Fotos wurden neu gelesen.</translation>
    </message>
    <message>
      <source>{0} records are in {1}.</source>
      <translation>{0} Protokolle sind in {1}.</translation>
    </message>
    <message>
      <source>{0} records are left out: they give another datum, or none.</source>
      <translation>{0} Protokolle sind ausgelassen: Sie nennen einen anderen Bezugspunkt oder keinen.</translation>
    </message>
    <message>
      <source>{0} records may be deleted today by these rules. Deleting is done by: ptmark archive keep --delete; it is logged, and never takes what a hold or a signed retest needs.</source>
      <translation>{0} Protokolle dürfen nach diesen Regeln heute gelöscht werden. Das tut: ptmark archive keep --delete; es wird aufgezeichnet und nimmt nie, was eine Sperre oder eine unterschriebene Wiederholungsprüfung braucht.</translation>
    </message>
    <message>
      <source>{0} records with {1} photos are in {2}.</source>
      <translation>{0} Protokolle mit {1} Fotos sind in {2}.</translation>
    </message>
    <message>
      <source>{0} records; {1}</source>
      <translation>{0} Protokolle; {1}</translation>
    </message>
    <message>
      <source>{0} taken</source>
      <translation>{0} übernommen</translation>
    </message>
    <message>
      <source>{0} to look at, {1} taken</source>
      <translation>{0} anzusehen, {1} übernommen</translation>
    </message>
    <message>
      <source>{0} to mend or fill in</source>
      <translation>{0} zu beheben oder auszufüllen</translation>
    </message>
    <message>
      <source>{0} {1} are missing or not as they were. Take them back from a second copy: ptmark archive repair --from FOLDER. Until then rely on none of them.</source>
      <translation>{0} {1} fehlen oder sind nicht, wie sie waren. Aus einer zweiten Kopie zurückholen: ptmark archive repair --from FOLDER. Bis dahin sich auf keines davon verlassen.</translation>
    </message>
    <message>
      <source>{0} {1} long, {2} {3} wide</source>
      <translation>{0} {1} lang, {2} {3} breit</translation>
    </message>
    <message>
      <source>{0} {1}, before the examination ({2}).</source>
      <translation>{0} {1}, vor der Prüfung ({2}).</translation>
    </message>
    <message>
      <source>{0} · kept</source>
      <translation>{0} · übernommen</translation>
    </message>
    <message>
      <source>{0} × {1} px</source>
      <translation>{0} × {1} px</translation>
    </message>
    <message>
      <source>{0} × {1} px, {2:.1f} megapixels, {3}</source>
      <translation>{0} × {1} px, {2:.1f} Megapixel, {3}</translation>
    </message>
    <message>
      <source>{0}, all photos</source>
      <translation>{0}, alle Fotos</translation>
    </message>
    <message>
      <source>{0}, along its path {1}, area {2}. Its length is uncertain by:</source>
      <translation>{0}, längs seines Wegs {1}, Fläche {2}. Die Länge ist unsicher durch:</translation>
    </message>
    <message>
      <source>{0}, changes</source>
      <translation>{0}, ändert sich</translation>
    </message>
    <message>
      <source>{0}, edition {1}, compared in {2}</source>
      <translation>{0}, Ausgabe {1}, verglichen in {2}</translation>
    </message>
    <message>
      <source>{0}, from the marked line</source>
      <translation>{0}, von der markierten Linie</translation>
    </message>
    <message>
      <source>{0}, grid {1}</source>
      <translation>{0}, Raster {1}</translation>
    </message>
    <message>
      <source>{0}, in other photos too</source>
      <translation>{0}, auch in anderen Fotos</translation>
    </message>
    <message>
      <source>{0}, in {1}</source>
      <translation>{0}, in {1}</translation>
    </message>
    <message>
      <source>{0}, lies in the same place</source>
      <translation>{0}, liegt an derselben Stelle</translation>
    </message>
    <message>
      <source>{0}, needed</source>
      <translation>{0}, nötig</translation>
    </message>
    <message>
      <source>{0}, revision {1}: kept in the place of the earlier.</source>
      <translation>{0}, Fassung {1}: an der Stelle der früheren aufbewahrt.</translation>
    </message>
    <message>
      <source>{0}, revision {1}: kept with its photos.</source>
      <translation>{0}, Fassung {1}: mit seinen Fotos aufbewahrt.</translation>
    </message>
    <message>
      <source>{0}, revision {1}: signed by {2}; key {3}</source>
      <translation>{0}, Fassung {1}: unterschrieben von {2}; Schlüssel {3}</translation>
    </message>
    <message>
      <source>{0}, revision {1}: was kept already, the same.</source>
      <translation>{0}, Fassung {1}: war schon aufbewahrt, dieselbe.</translation>
    </message>
    <message>
      <source>{0}, revision {1}: {2}</source>
      <translation>{0}, Fassung {1}: {2}</translation>
    </message>
    <message>
      <source>{0}, {1} of 2</source>
      <translation>{0}, {1} von 2</translation>
    </message>
    <message>
      <source>{0}, {1}/px</source>
      <translation>{0}, {1}/px</translation>
    </message>
    <message>
      <source>{0}. The examiner sees the remarks on opening the record.</source>
      <translation>{0}. Der Prüfer sieht die Bemerkungen, wenn er das Protokoll öffnet.</translation>
    </message>
    <message>
      <source>{0}. Written from edition {1}; compared in {2}.</source>
      <translation>{0}. Geschrieben nach Ausgabe {1}; verglichen in {2}.</translation>
    </message>
    <message>
      <source>{0}: a later revision, {1}, is kept already; it stays.</source>
      <translation>{0}: Eine spätere Fassung, {1}, ist schon aufbewahrt; sie bleibt.</translation>
    </message>
    <message>
      <source>{0}: over or under</source>
      <translation>{0}: darüber oder darunter</translation>
    </message>
    <message>
      <source>{0}: print it at 100 %, and lay it flat.</source>
      <translation>{0}: mit 100 % drucken und flach hinlegen.</translation>
    </message>
    <message>
      <source>{0}: {1:g} at least is over {2:g} at most</source>
      <translation>{0}: mindestens {1:g} liegt über höchstens {2:g}</translation>
    </message>
    <message>
      <source>{0}: {1} inspections, {2} indications{3}, {4}</source>
      <translation>{0}: {1} Prüfungen, {2} Anzeigen{3}, {4}</translation>
    </message>
    <message>
      <source>{0}: {1} marked</source>
      <translation>{0}: {1} markiert</translation>
    </message>
    <message>
      <source>{0}: {1} records, {2} to review</source>
      <translation>{0}: {1} Protokolle, {2} gegenzuprüfen</translation>
    </message>
    <message>
      <source>{0}: {1}. Make room or mend its rights.</source>
      <translation>{0}: {1}. Platz schaffen oder die Rechte richten.</translation>
    </message>
    <message>
      <source>{0}: “{1}” is no limit</source>
      <translation>{0}: „{1}“ ist keine Grenze</translation>
    </message>
    <message>
      <source>{0}{1}, newest first.</source>
      <translation>{0}{1}, neueste zuerst.</translation>
    </message>
    <message>
      <source>{0}{1}, {2}, {3}, {4} indications</source>
      <translation>{0}{1}, {2}, {3}, {4} Anzeigen</translation>
    </message>
    <message>
      <source>°C or °F, with the unit</source>
      <translation>°C oder °F, mit Einheit</translation>
    </message>
    <message>
      <source>µW/cm² at the surface; fluorescent penetrant only</source>
      <translation>µW/cm² an der Oberfläche; nur fluoreszierendes Eindringmittel</translation>
    </message>
    <message>
      <source>“{0}” is no corner</source>
      <translation>„{0}“ ist keine Ecke</translation>
    </message>
    <message>
      <source>‹Ctrl+M› marks the place of a remark, ‹Ctrl+D› ends measuring and shows both.</source>
      <translation>‹Ctrl+M› markiert die Stelle einer Bemerkung, ‹Ctrl+D› beendet das Messen und zeigt beide.</translation>
    </message>
    <message>
      <source>‹Ctrl+M› marks the place of a remark; ‹Alt+S› signs, ‹Alt+R› returns it.</source>
      <translation>‹Ctrl+M› markiert die Stelle einer Bemerkung; ‹Alt+S› unterschreibt, ‹Alt+R› gibt es zurück.</translation>
    </message>
    <message>
      <source>‹Ctrl+S› saves record, annotated image and PDF beside each other. That is the whole way; the sample can be saved or left.</source>
      <translation>‹Ctrl+S› speichert Protokoll, Bild mit Anzeigen und PDF nebeneinander. Das ist der ganze Weg; das Beispiel kann gespeichert oder verlassen werden.</translation>
    </message>
    <message>
      <source>‹Ctrl+S› saves record, image and PDF beside each other.</source>
      <translation>‹Ctrl+S› speichert Protokoll, Bild und PDF nebeneinander.</translation>
    </message>
    <message>
      <source>‹Return› takes, ‹Del› drops, arrow keys go on. {0}</source>
      <translation>‹Return› übernimmt, ‹Del› verwirft, Pfeiltasten gehen weiter. {0}</translation>
    </message>
    <message>
      <source>‹Shift+F1› takes the guided pass up again.</source>
      <translation>‹Shift+F1› nimmt den geführten Durchgang wieder auf.</translation>
    </message>
  </context>
  <context>
    <name>QShortcut</name>
    <message>
      <source>Ctrl</source>
      <translation>Strg</translation>
    </message>
    <message>
      <source>Shift</source>
      <translation>Umsch</translation>
    </message>
    <message>
      <source>Alt</source>
      <translation>Alt</translation>
    </message>
    <message>
      <source>Return</source>
      <translation>Enter</translation>
    </message>
    <message>
      <source>Del</source>
      <translation>Entf</translation>
    </message>
    <message>
      <source>Ins</source>
      <translation>Einfg</translation>
    </message>
    <message>
      <source>Esc</source>
      <translation>Esc</translation>
    </message>
    <message>
      <source>Backspace</source>
      <translation>Rück</translation>
    </message>
    <message>
      <source>PgUp</source>
      <translation>Bild↑</translation>
    </message>
    <message>
      <source>PgDown</source>
      <translation>Bild↓</translation>
    </message>
    <message>
      <source>Left</source>
      <translation>Links</translation>
    </message>
    <message>
      <source>Right</source>
      <translation>Rechts</translation>
    </message>
    <message>
      <source>Up</source>
      <translation>Auf</translation>
    </message>
    <message>
      <source>Down</source>
      <translation>Ab</translation>
    </message>
  </context>
</TS>
