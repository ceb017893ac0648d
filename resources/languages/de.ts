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
      <source> Outside the examined area, and judged all the same: {0}.</source>
      <translation> Außerhalb des Prüfbereichs und doch bewertet: {0}.</translation>
    </message>
    <message>
      <source> What would narrow the uncertainty of {0} most: {1}.</source>
      <translation> Was die Unsicherheit von {0} am meisten verringern würde: {1}.</translation>
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
      <source> fits both the line and the filters</source>
      <translation> passt zu Zeile und Filtern zugleich</translation>
    </message>
    <message>
      <source> that fit the filters</source>
      <translation>, passend zu den Filtern</translation>
    </message>
    <message>
      <source> whose part number begins with {0}</source>
      <translation>, deren Teilenummer mit {0} beginnt</translation>
    </message>
    <message>
      <source> with the part number {0}</source>
      <translation> mit der Teilenummer {0}</translation>
    </message>
    <message>
      <source> with the words “{0}”</source>
      <translation> mit den Wörtern „{0}“</translation>
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
      <translation>, {0} außerhalb des Prüfbereichs</translation>
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
      <source>1 more photo</source>
      <translation>1 weiteres Foto</translation>
    </message>
    <message>
      <source>1 record</source>
      <translation>1 Protokoll</translation>
    </message>
    <message>
      <source>1 year</source>
      <translation>1 Jahr</translation>
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
      <source>A PDF of the card that is found in a photo by itself</source>
      <translation>Eine PDF der Karte, die im Foto von selbst gefunden wird</translation>
    </message>
    <message>
      <source>A click opens it; drag it to another program or folder</source>
      <translation>Ein Klick öffnet sie; ziehen bringt sie in ein anderes Programm oder einen Ordner</translation>
    </message>
    <message>
      <source>A click or Enter takes one back as an indication.</source>
      <translation>Ein Klick oder Enter nimmt sie als Anzeige zurück.</translation>
    </message>
    <message>
      <source>A new hold keeps what was searched for last, now and later: {0}.</source>
      <translation>Eine neue Sperre behält, wonach zuletzt gesucht wurde, jetzt und künftig: {0}.</translation>
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
      <source>A rule deleted {0} more meanwhile.</source>
      <translation>{0} weitere löschte inzwischen eine Regel.</translation>
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
      <source>An end may be covered: its sizes are the least it can have.</source>
      <translation>Ein Ende kann verdeckt sein: die Maße sind die kleinsten, die sie haben kann.</translation>
    </message>
    <message>
      <source>An export can leave it out; the original keeps it.</source>
      <translation>Eine Ausgabe kann es weglassen; das Original behält es.</translation>
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
      <source>At least {0:g} min.</source>
      <translation>Mindestens {0:g} min.</translation>
    </message>
    <message>
      <source>At most {0:g} min.</source>
      <translation>Höchstens {0:g} min.</translation>
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
      <source>Bring it back</source>
      <translation>Zurückholen</translation>
    </message>
    <message>
      <source>Bringing the work back</source>
      <translation>Die Arbeit wird zurückgeholt</translation>
    </message>
    <message>
      <source>By keys: arrows steer, Space sets a point, Enter closes, Esc leaves.</source>
      <translation>Mit Tasten: Pfeile steuern, die Leertaste setzt einen Punkt, Enter schließt, Esc bricht ab.</translation>
    </message>
    <message>
      <source>By keys: arrows steer, Space sets a point.</source>
      <translation>Mit Tasten: Pfeile steuern, die Leertaste setzt einen Punkt.</translation>
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
      <source>Changed since it was saved. {0}</source>
      <translation>Seit dem Speichern geändert. {0}</translation>
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
      <source>Choose it where the verdict says that the photo does not tell it</source>
      <translation>Zu wählen, wo das Urteil sagt, dass das Foto sie nicht zeigt</translation>
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
      <source>Copy the camera's own file to this computer and drop that.</source>
      <translation>Die Datei der Kamera selbst auf diesen Rechner kopieren und diese ablegen.</translation>
    </message>
    <message>
      <source>Copy the photo's file and paste that, or drop it here.</source>
      <translation>Die Datei des Fotos kopieren und einfügen oder hierher ziehen.</translation>
    </message>
    <message>
      <source>Count all</source>
      <translation>Alle zählen</translation>
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
      <source>Delete it</source>
      <translation>Löschen</translation>
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
      <source>Discarded: {0}, last changed {1}.</source>
      <translation>Verworfen: {0}, zuletzt geändert {1}.</translation>
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
      <source>Drag a corner, or Tab to it and use the arrow keys; a click adds one, Backspace removes one. Enter takes it, Esc leaves it as it was.</source>
      <translation>Ecke ziehen, oder mit Tab zu ihr und mit den Pfeiltasten; ein Klick fügt eine hinzu, die Rücktaste entfernt eine. Enter übernimmt, Esc lässt alles, wie es war.</translation>
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
      <source>Draw round the indication with the button held down, or click points.</source>
      <translation>Mit gedrückter Taste um die Anzeige zeichnen oder Punkte klicken.</translation>
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
      <source>Drawn by hand, traced {0} times: its ends stray by {1:.1f} px.</source>
      <translation>Von Hand gezeichnet, {0} Mal: die Enden streuen um {1:.1f} px.</translation>
    </message>
    <message>
      <source>Drawn by hand, traced {0} times: too few yet.</source>
      <translation>Von Hand gezeichnet, {0} Mal: noch zu wenige.</translation>
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
      <source>Drop it as: {0}</source>
      <translation>Verwerfen als: {0}</translation>
    </message>
    <message>
      <source>Drop it from the verdict and go on; what was found stays told, what was drawn by hand is deleted</source>
      <translation>Aus der Bewertung nehmen und weiter; Gefundenes bleibt genannt, von Hand Gezeichnetes wird gelöscht</translation>
    </message>
    <message>
      <source>Drop it with its reason:</source>
      <translation>Mit Grund verwerfen:</translation>
    </message>
    <message>
      <source>Drop photos (JPEG, PNG, TIFF, WebP, HEIC, AVIF), a record or a folder of records.</source>
      <translation>Fotos (JPEG, PNG, TIFF, WebP, HEIC, AVIF), ein Protokoll oder einen Ordner mit Protokollen ablegen.</translation>
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
      <source>Dye that ran</source>
      <translation>Verlaufener Farbstoff</translation>
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
      <source>Ends at the photo's edge: its sizes are the least it can have.</source>
      <translation>Endet am Rand des Fotos: Die Maße sind die kleinsten, die sie haben kann.</translation>
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
      <source>Examined after {0}: {1}{2}. The rest has not been looked through yet.</source>
      <translation>Geprüft nach dem {0}: {1}{2}. Der Rest ist noch nicht durchsucht.</translation>
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
      <source>Examiner: {0}</source>
      <translation>Prüfer: {0}</translation>
    </message>
    <message>
      <source>Example indications</source>
      <translation>Beispielanzeigen</translation>
    </message>
    <message>
      <source>Examples</source>
      <translation>Beispiele</translation>
    </message>
    <message>
      <source>Examples, invented, in mm; change one and see.</source>
      <translation>Erfundene Beispiele, in mm; änderbar.</translation>
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
      <source>Find in the archive (‹Ctrl+F›)</source>
      <translation>Im Archiv suchen (‹Ctrl+F›)</translation>
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
      <source>Folder of the bundles</source>
      <translation>Ordner der Pakete</translation>
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
      <source>Give the same location datum (at the Record step, such as “corner at hole A, x along the weld”) in each of them, and choose it here; or lay them by hand: ptmark archive place.</source>
      <translation>In jedem denselben Bezugspunkt angeben (im Schritt Protokoll, etwa „Ecke an Bohrung A, x längs der Naht“) und ihn hier wählen; oder sie von Hand legen: ptmark archive place.</translation>
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
      <translation>Als sein Prüfer weitermachen</translation>
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
      <source>Haze of the background: {0:.0f} % of full dye or light.</source>
      <translation>Schleier des Untergrunds: {0:.0f} % der vollen Farbe oder des vollen Lichts.</translation>
    </message>
    <message>
      <source>Heading before</source>
      <translation>Überschrift davor</translation>
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
      <translation>Im Foto: die eigenen Umrisse, wie sie gezeichnet wurden; die des Ersten strichpunktiert und mit „erste“ benannt, wo beide abweichen. En über 1: Sie weichen um mehr ab als ihre Unsicherheiten zusammen (ISO/IEC 17043).</translation>
    </message>
    <message>
      <source>Indication</source>
      <translation>Anzeige</translation>
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
      <source>Indications: {0}.</source>
      <translation>Anzeigen: {0}.</translation>
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
      <source>Its ends may not show: its sizes are the least it can have.</source>
      <translation>Ihre Enden sind vielleicht nicht zu sehen: die Maße sind die kleinsten, die sie haben kann.</translation>
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
      <source>Kind of penetrant</source>
      <translation>Art des Eindringmittels</translation>
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
      <source>L/W ± U</source>
      <translation>L/B ± U</translation>
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
      <source>Left as they were, not being of this record: {0}.</source>
      <translation>Unverändert gelassen, da nicht zu diesem Protokoll gehörig: {0}.</translation>
    </message>
    <message>
      <source>Left open by: {0}.</source>
      <translation>Offen gelassen durch: {0}.</translation>
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
      <source>Look further back</source>
      <translation>Weiter zurück suchen</translation>
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
      <source>More</source>
      <translation>Mehr</translation>
    </message>
    <message>
      <source>More than {0:,} records</source>
      <translation>Mehr als {0:,} Protokolle</translation>
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
      <source>Name of the hold</source>
      <translation>Name der Sperre</translation>
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
      <source>Next heading</source>
      <translation>Nächste Überschrift</translation>
    </message>
    <message>
      <source>Next missing field</source>
      <translation>Nächstes fehlendes Feld</translation>
    </message>
    <message>
      <source>Next part</source>
      <translation>Nächstes Teil</translation>
    </message>
    <message>
      <source>Next photo of the folder</source>
      <translation>Nächstes Foto des Ordners</translation>
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
      <source>No disposition is given yet: what is signed tells of none.</source>
      <translation>Noch kein Entscheid: Was unterschrieben wird, nennt keinen.</translation>
    </message>
    <message>
      <source>No examination date is given: filed under {0}</source>
      <translation>Kein Prüfdatum angegeben: abgelegt unter {0}</translation>
    </message>
    <message>
      <source>No figure.</source>
      <translation>Kein Wert.</translation>
    </message>
    <message>
      <source>No further photo without a record in {0}.</source>
      <translation>Kein weiteres Foto ohne Protokoll in {0}.</translation>
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
      <source>None of the {0} records says where it lies on the part.</source>
      <translation>Keines der {0} Protokolle sagt, wo auf dem Teil es liegt.</translation>
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
• In quotation marks it is the whole number: "P-1" does not find P-17.
• Serial, examiner, procedure and criteria are whole names; a * stands for the rest: PT-* finds PT-1.
• Kind, shape and lengths ask for one indication that has all of them. A length shown with ≥ runs out of its photo, is covered, overexposed or unsure at its ends: asked for longer ones, it is found too.
• Capitals do not matter. “Clear all” takes every filter away.</source>
      <translation>Nichts im Archiv passt.

• Die Zeile oben ist der Anfang einer Teilenummer: P-1 findet P-17 und P-170. Ein * steht für beliebige Zeichen, ein ? für eines: *17 findet, was auf 17 endet.
• Wo keine Teilenummer so beginnt, wird unter den Wörtern der Protokolle gesucht: Bemerkungen, Arten, Notizen, Namen.
• In Anführungszeichen ist es die ganze Nummer: "P-1" findet P-17 nicht.
• Seriennummer, Prüfer, Verfahren und Kriterien sind ganze Namen; ein * steht für den Rest: PT-* findet PT-1.
• Art, Form und Längen fragen nach einer Anzeige, auf die alle zutreffen. Eine Länge mit ≥ läuft aus dem Foto, ist verdeckt, überbelichtet oder an den Enden unsicher: wird nach längeren gefragt, wird sie auch gefunden.
• Groß und klein ist gleich. „Alles leeren“ nimmt jeden Filter weg.</translation>
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
      <source>Of your {0} outlines you took {1}: the others are the program beside itself, which checks its steadiness, not an eye. Look at them before you sign.</source>
      <translation>Von {0} eigenen Umrissen übernommen: {1}. Bei den anderen steht das Programm neben sich selbst: Das prüft seine Beständigkeit, kein Auge. Vor dem Unterschreiben ansehen.</translation>
    </message>
    <message>
      <source>On overexposed developer: its sizes are the least it can have.</source>
      <translation>Auf überbelichtetem Entwickler: die Maße sind die kleinsten, die sie haben kann.</translation>
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
      <source>Only who has the archive keeper's role may set a hold or take one away.</source>
      <translation>Eine Sperre setzen oder aufheben darf nur, wer die Rolle der Archivverwaltung hat.</translation>
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
      <source>Open copied photos or a copied record</source>
      <translation>Kopierte Fotos oder ein kopiertes Protokoll öffnen</translation>
    </message>
    <message>
      <source>Open the record {0}</source>
      <translation>Das Protokoll {0} öffnen</translation>
    </message>
    <message>
      <source>Open the test before it</source>
      <translation>Die Prüfung davor öffnen</translation>
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
      <source>Or drop a photo anywhere on the window, or copy and paste its file; several become one inspection.</source>
      <translation>Oder ein Foto irgendwo auf das Fenster ziehen, oder seine Datei kopieren und einfügen; mehrere werden eine Prüfung.</translation>
    </message>
    <message>
      <source>Or try it on a sample, rendered and invented:</source>
      <translation>Oder an einem Beispiel versuchen, gerechnet und erfunden:</translation>
    </message>
    <message>
      <source>Order of the records found</source>
      <translation>Reihenfolge der gefundenen Protokolle</translation>
    </message>
    <message>
      <source>Original photo …</source>
      <translation>Originalfoto …</translation>
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
      <source>Page</source>
      <translation>Seite</translation>
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
      <source>Path ± U</source>
      <translation>Weg ± U</translation>
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
      <source>Penetrant: as the photo tells</source>
      <translation>Eindringmittel: wie das Foto es zeigt</translation>
    </message>
    <message>
      <source>Penetrant: colour contrast</source>
      <translation>Eindringmittel: Farbkontrast</translation>
    </message>
    <message>
      <source>Penetrant: fluorescent</source>
      <translation>Eindringmittel: fluoreszierend</translation>
    </message>
    <message>
      <source>Photo</source>
      <translation>Foto</translation>
    </message>
    <message>
      <source>Photo and page exchange places</source>
      <translation>Foto und Seite tauschen die Plätze</translation>
    </message>
    <message>
      <source>Photo of the record</source>
      <translation>Foto des Protokolls</translation>
    </message>
    <message>
      <source>Photo {0}</source>
      <translation>Foto {0}</translation>
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
      <source>Photos ({0});;All files (*)</source>
      <translation>Fotos ({0});;Alle Dateien (*)</translation>
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
      <source>Place map; arrow keys go from cell to cell, with Shift to the next find</source>
      <translation>Lagekarte; die Pfeiltasten gehen von Zelle zu Zelle, mit Umschalt zum nächsten Fund</translation>
    </message>
    <message>
      <source>Placed otherwise on the part than here, which is kept: {0}.</source>
      <translation>Auf dem Teil anders angeordnet als hier, wo es bleibt, wie es war: {0}.</translation>
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
      <source>Points: {0} of at least three. Backspace: one back.</source>
      <translation>Punkte: {0} von mindestens drei. Rücktaste: einen zurück.</translation>
    </message>
    <message>
      <source>Points: {0}. Enter, or a click on the first point, closes it.</source>
      <translation>Punkte: {0}. Enter oder ein Klick auf den ersten Punkt schließt den Bereich.</translation>
    </message>
    <message>
      <source>Points: {0}. Enter, or a click on the first point, closes the outline. Backspace: one back.</source>
      <translation>Punkte: {0}. Enter oder ein Klick auf den ersten Punkt schließt den Umriss. Rücktaste: einen zurück.</translation>
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
      <source>Press “Developer dry” in the process log, or type when it was.</source>
      <translation>Im Ablauf der Prüfung „Entwickler trocken“ drücken oder eintippen, wann das war.</translation>
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
      <source>Reason for setting the hold or taking it away</source>
      <translation>Grund, die Sperre zu setzen oder aufzuheben</translation>
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
      <source>Record after</source>
      <translation>Protokoll danach</translation>
    </message>
    <message>
      <source>Record before</source>
      <translation>Protokoll davor</translation>
    </message>
    <message>
      <source>Record or photo</source>
      <translation>Protokoll oder Foto</translation>
    </message>
    <message>
      <source>Record {0}, revision {1}</source>
      <translation>Protokoll {0}, Fassung {1}</translation>
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
      <source>Records and photos of another archive, from the folder it saved them in</source>
      <translation>Protokolle und Fotos eines anderen Archivs, aus dem Ordner, in den es sie gespeichert hat</translation>
    </message>
    <message>
      <source>Records to review</source>
      <translation>Protokolle zur Gegenprüfung</translation>
    </message>
    <message>
      <source>Red pen</source>
      <translation>Roter Stift</translation>
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
      <source>Rejected or sent to rework: no record tells its disposition yet</source>
      <translation>Zurückgewiesen oder nachgearbeitet: noch kein Protokoll nennt seinen Entscheid</translation>
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
      <source>Rename it</source>
      <translation>Umbenennen</translation>
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
      <source>Retest of an earlier test.</source>
      <translation>Wiederholungsprüfung einer früheren Prüfung.</translation>
    </message>
    <message>
      <source>Retest of {0}</source>
      <translation>Wiederholungsprüfung von {0}</translation>
    </message>
    <message>
      <source>Retest of {0}.</source>
      <translation>Wiederholungsprüfung von {0}.</translation>
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
      <source>Review</source>
      <translation>Gegenprüfung</translation>
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
      <source>SHA-256 that the record names: {0}</source>
      <translation>SHA-256, die das Protokoll nennt: {0}</translation>
    </message>
    <message>
      <source>Same as</source>
      <translation>Dieselbe wie</translation>
    </message>
    <message>
      <source>Same part number, another serial</source>
      <translation>Gleiche Teilenummer, andere Seriennummer</translation>
    </message>
    <message>
      <source>Same part number, next serial</source>
      <translation>Gleiche Teilenummer, nächste Seriennummer</translation>
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
      <source>Save the scale card to print …</source>
      <translation>Maßstabskarte zum Drucken speichern …</translation>
    </message>
    <message>
      <source>Save this search</source>
      <translation>Diese Suche speichern</translation>
    </message>
    <message>
      <source>Save this work under another name, or open the record again</source>
      <translation>Diese Arbeit unter anderem Namen speichern oder das Protokoll neu öffnen</translation>
    </message>
    <message>
      <source>Save under another name …</source>
      <translation>Unter anderem Namen speichern …</translation>
    </message>
    <message>
      <source>Save {0} as a list …</source>
      <translation>{0} als Liste speichern …</translation>
    </message>
    <message>
      <source>Save {0} bundles …</source>
      <translation>{0} Pakete speichern …</translation>
    </message>
    <message>
      <source>Saved all the same: {0}.</source>
      <translation>Gespeichert ist trotzdem: {0}.</translation>
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
      <source>Saved {0}. Print it at 100 %, not fitted to the page, and measure its check length with callipers: that goes into the Scale step, once.</source>
      <translation>{0} gespeichert. Mit 100 % drucken, nicht an die Seite anpassen, und die Prüflänge mit dem Messschieber messen: Sie wird einmal im Schritt Maßstab eingetragen.</translation>
    </message>
    <message>
      <source>Saving {0}</source>
      <translation>{0} wird gespeichert</translation>
    </message>
    <message>
      <source>Say here what is to be done, then choose that again.</source>
      <translation>Hier sagen, was zu tun ist, dann dasselbe noch einmal wählen.</translation>
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
      <source>Scale: {0}.</source>
      <translation>Maßstab: {0}.</translation>
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
      <source>See more above</source>
      <translation>Weiter oben sehen</translation>
    </message>
    <message>
      <source>See more below</source>
      <translation>Weiter unten sehen</translation>
    </message>
    <message>
      <source>See more to the left</source>
      <translation>Weiter links sehen</translation>
    </message>
    <message>
      <source>See more to the right</source>
      <translation>Weiter rechts sehen</translation>
    </message>
    <message>
      <source>Seen here</source>
      <translation>Hier gesehen</translation>
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
      <source>Selected: {0}.</source>
      <translation>Gewählt: {0}.</translation>
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
      <source>Serial {0} was counted on from the part before: read it on the part.</source>
      <translation>Die Seriennummer {0} wurde vom Teil davor weitergezählt: am Teil ablesen.</translation>
    </message>
    <message>
      <source>Set this hold</source>
      <translation>Diese Sperre setzen</translation>
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
      <source>Signed as it stands. A PDF saved before does not show the signature: save it again.</source>
      <translation>Unterschrieben, wie es steht. Ein vorher gespeichertes PDF zeigt die Unterschrift nicht: noch einmal speichern.</translation>
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
      <source>Stain or print</source>
      <translation>Fleck oder Druck</translation>
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
      <source>Take bundles in …</source>
      <translation>Pakete aufnehmen …</translation>
    </message>
    <message>
      <source>Take every suggestion not looked at</source>
      <translation>Jeden noch nicht angesehenen Vorschlag übernehmen</translation>
    </message>
    <message>
      <source>Take it away</source>
      <translation>Aufheben</translation>
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
      <source>Taking bundles in</source>
      <translation>Pakete werden aufgenommen</translation>
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
      <source>The camera's maker left a note of its own, which may hold a place and is not read, in {0}.</source>
      <translation>Der Hersteller der Kamera hat eine eigene Notiz hinterlassen, die einen Ort enthalten kann und nicht gelesen wird, in {0}.</translation>
    </message>
    <message>
      <source>The card was found, so pixels are millimetres now. Without a card, choose a rule or a rectangle and pick its points. Every length carries its ± U from here on.</source>
      <translation>Die Karte wurde gefunden, Pixel sind jetzt Millimeter. Ohne Karte einen Maßstab oder ein Rechteck wählen und seine Punkte setzen. Jede Länge trägt von hier an ihr ± U.</translation>
    </message>
    <message>
      <source>The card's check length is {0}, as entered on {1}; another print has its own.</source>
      <translation>Die Prüflänge der Karte ist {0}, eingegeben am {1}; ein anderer Ausdruck hat seine eigene.</translation>
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
      <source>The hold “{0}” is set.</source>
      <translation>Die Sperre „{0}“ ist gesetzt.</translation>
    </message>
    <message>
      <source>The hold “{0}” is taken away; the log keeps it and why.</source>
      <translation>Die Sperre „{0}“ ist aufgehoben; das Verzeichnis behält sie und den Grund.</translation>
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
      <source>The next one by name that has no record beside it</source>
      <translation>Das dem Namen nach nächste, zu dem kein Protokoll daneben liegt</translation>
    </message>
    <message>
      <source>The next photo</source>
      <translation>Das nächste Foto</translation>
    </message>
    <message>
      <source>The one record does not say where it lies on the part.</source>
      <translation>Das eine Protokoll sagt nicht, wo es auf dem Teil liegt.</translation>
    </message>
    <message>
      <source>The other photo</source>
      <translation>Das andere Foto</translation>
    </message>
    <message>
      <source>The others are kept already.</source>
      <translation>Die übrigen sind schon da.</translation>
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
      <source>The record is as it was written: {0}.</source>
      <translation>Das Protokoll ist, wie es geschrieben wurde: {0}.</translation>
    </message>
    <message>
      <source>The record is as it was written; nobody has signed it.</source>
      <translation>Das Protokoll ist, wie es geschrieben wurde; niemand hat es unterschrieben.</translation>
    </message>
    <message>
      <source>The record names no procedure yet; these hold until it names one.</source>
      <translation>Das Protokoll nennt noch kein Verfahren; diese Werte gelten, bis es eines nennt.</translation>
    </message>
    <message>
      <source>The record stays as it is. A verdict is an aid; the inspector decides.</source>
      <translation>Das Protokoll bleibt, wie es ist. Eine Bewertung ist eine Hilfe; der Prüfer entscheidet.</translation>
    </message>
    <message>
      <source>The record's examination date, “{0}”, is no day: it is filed under {1}.</source>
      <translation>Das Prüfdatum des Protokolls, „{0}“, ist kein Tag: Es ist unter {1} abgelegt.</translation>
    </message>
    <message>
      <source>The records selected, as a table (CSV) or as JSON</source>
      <translation>Die ausgewählten Protokolle, als Tabelle (CSV) oder als JSON</translation>
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
      <source>The rules have been changed since the record was judged; this verdict is by the rules as they are now.</source>
      <translation>Die Regeln wurden geändert, seit das Protokoll bewertet wurde; diese Bewertung gilt nach den Regeln, wie sie jetzt sind.</translation>
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
      <source>The same one once more, to tell how far your hand strays</source>
      <translation>Dieselbe noch einmal, um zu sehen, wie weit die Hand streut</translation>
    </message>
    <message>
      <source>The saved search “{0}” is deleted; no record is.</source>
      <translation>Die gespeicherte Suche „{0}“ ist gelöscht, kein Protokoll.</translation>
    </message>
    <message>
      <source>The saved search “{0}” is “{1}” now.</source>
      <translation>Die gespeicherte Suche „{0}“ heißt jetzt „{1}“.</translation>
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
      <source>The test before</source>
      <translation>Die Prüfung davor</translation>
    </message>
    <message>
      <source>The test before: {0}</source>
      <translation>Die Prüfung davor: {0}</translation>
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
      <source>There is no verdict that this follows from; give the reason.</source>
      <translation>Es gibt keine Bewertung, aus der das folgt; den Grund angeben.</translation>
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
      <source>They were not looked for. Look again, or trace what you see.</source>
      <translation>Sie wurden nicht gesucht. Noch einmal suchen oder nachziehen, was zu sehen ist.</translation>
    </message>
    <message>
      <source>Thickness</source>
      <translation>Dicke</translation>
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
      <source>This review was begun before: it goes on where it was left.</source>
      <translation>Diese Gegenprüfung war schon begonnen: Sie geht weiter, wo sie verlassen wurde.</translation>
    </message>
    <message>
      <source>Thread</source>
      <translation>Faden</translation>
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
      <source>To set a hold, first search for the records that it is to keep.</source>
      <translation>Um eine Sperre zu setzen, zuerst nach den Protokollen suchen, die sie behalten soll.</translation>
    </message>
    <message>
      <source>To the examiner, with the remarks</source>
      <translation>An den Prüfer, mit den Bemerkungen</translation>
    </message>
    <message>
      <source>Trace again</source>
      <translation>Nochmals zeichnen</translation>
    </message>
    <message>
      <source>Trace along the edge of the dye</source>
      <translation>An der Kante der Farbe entlang zeichnen</translation>
    </message>
    <message>
      <source>Trace by hand</source>
      <translation>Von Hand zeichnen</translation>
    </message>
    <message>
      <source>Trace free hand, or by points</source>
      <translation>Freihändig oder mit Punkten zeichnen</translation>
    </message>
    <message>
      <source>Trace point by point</source>
      <translation>Punkt für Punkt zeichnen</translation>
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
      <translation>Winkel</translation>
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
      <source>Unfinished {0}, last changed {1}.</source>
      <translation>Unfertige {0}, zuletzt geändert {1}.</translation>
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
      <source>Verdict: {0}</source>
      <translation>Bewertung: {0}</translation>
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
      <source>Ways of seeing</source>
      <translation>Arten der Ansicht</translation>
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
      <source>What the drawing and the procedure say of such parts comes with it, marked</source>
      <translation>Was Zeichnung und Verfahren von solchen Teilen sagen, kommt mit, gekennzeichnet</translation>
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
      <source>Wheel or plus and minus zoom, F fits, 1 shows pixel for pixel, Ctrl, Shift and arrow keys move the photo.</source>
      <translation>Rad oder Plus und Minus zoomen, F passt ein, 1 zeigt Pixel für Pixel, Strg, Umschalt und Pfeiltasten bewegen das Foto.</translation>
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
      <source>Where it was taken stands in the photo: {0}.</source>
      <translation>Im Foto steht, wo es aufgenommen wurde: {0}.</translation>
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
      <source>Width ± U</source>
      <translation>Breite ± U</translation>
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
      <source>Writes the photo shown byte for byte as it was taken in</source>
      <translation>Schreibt das gezeigte Foto Byte für Byte, wie es aufgenommen wurde</translation>
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
      <source>a copied picture has no file: what the camera wrote into it is lost</source>
      <translation>ein kopiertes Bild hat keine Datei: was die Kamera hineinschrieb, ist verloren</translation>
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
      <source>a picture on a web page is no original: it may have been made smaller</source>
      <translation>ein Bild auf einer Webseite ist kein Original: es ist vielleicht verkleinert</translation>
    </message>
    <message>
      <source>a record that is not at hand ({0})</source>
      <translation>einem Protokoll, das nicht zur Hand ist ({0})</translation>
    </message>
    <message>
      <source>a record that is not kept here</source>
      <translation>einem Protokoll, das hier nicht aufbewahrt ist</translation>
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
      <source>agrees</source>
      <translation>stimmt überein</translation>
    </message>
    <message>
      <source>an outline cannot have a hole</source>
      <translation>ein Umriss kann kein Loch haben</translation>
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
      <source>at least {0}</source>
      <translation>mindestens {0}</translation>
    </message>
    <message>
      <source>at most</source>
      <translation>höchstens</translation>
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
      <source>by part and serial number</source>
      <translation>nach Teile- und Seriennummer</translation>
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
      <source>choose the kind of penetrant</source>
      <translation>Art des Eindringmittels wählen</translation>
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
      <source>counted on from the part before: read it on the part</source>
      <translation>vom Teil davor weitergezählt: am Teil ablesen</translation>
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
      <source>database</source>
      <translation>Datenbank</translation>
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
      <source>empty</source>
      <translation>leer</translation>
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
      <source>first {0}</source>
      <translation>erste {0}</translation>
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
      <source>hold the times against {0}</source>
      <translation>Zeiten an {0} messen</translation>
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
      <source>is not in the archive any more</source>
      <translation>ist nicht mehr im Archiv</translation>
    </message>
    <message>
      <source>is not signed by its examiner yet, so it cannot be reviewed.</source>
      <translation>ist von seinem Prüfer noch nicht unterschrieben und kann nicht gegengeprüft werden.</translation>
    </message>
    <message>
      <source>is open as its examiner left it; sign it when it is done.</source>
      <translation>ist offen, wie der Prüfer es verlassen hat; unterschreiben, wenn es fertig ist.</translation>
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
      <source>limit {0}</source>
      <translation>{0} begrenzen</translation>
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
      <translation>linienartig</translation>
    </message>
    <message>
      <source>log</source>
      <translation>Logbuch</translation>
    </message>
    <message>
      <source>longest indication first</source>
      <translation>längste Anzeige zuerst</translation>
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
      <source>most indications first</source>
      <translation>meiste Anzeigen zuerst</translation>
    </message>
    <message>
      <source>name</source>
      <translation>Art benennen von</translation>
    </message>
    <message>
      <source>name of the hold</source>
      <translation>Name der Sperre</translation>
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
      <source>neither a photo nor a record</source>
      <translation>weder ein Foto noch ein Protokoll</translation>
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
      <source>no kind named</source>
      <translation>keine Art genannt</translation>
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
      <source>no record</source>
      <translation>kein Protokoll</translation>
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
      <source>not looked for</source>
      <translation>nicht gesucht</translation>
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
      <source>oldest first</source>
      <translation>älteste zuerst</translation>
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
      <source>only a pipe's two outer edges go with a rule, a rectangle or the card on it</source>
      <translation>nur die zwei Außenkanten eines Rohrs gehen mit einem Maßstab, einem Rechteck oder der Karte darauf zusammen</translation>
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
      <source>picking: {0}.</source>
      <translation>Punkte: {0}.</translation>
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
      <source>reason, such as the claim and its date</source>
      <translation>Grund, etwa die Reklamation und ihr Datum</translation>
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
      <source>result, and the number of its report</source>
      <translation>Ergebnis und Nummer seines Berichts</translation>
    </message>
    <message>
      <source>retest, </source>
      <translation>Wiederholungsprüfung, </translation>
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
      <translation>nicht linienartig</translation>
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
      <source>search again: a rule may have let it be deleted meanwhile</source>
      <translation>suchen Sie neu: es kann inzwischen nach einer Regel gelöscht sein</translation>
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
      <translation>Relevanz ändern von</translation>
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
      <source>signed by {0} {1} on {2}, key {3}</source>
      <translation>unterschrieben von {0} {1} am {2}, Schlüssel {3}</translation>
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
      <source>store of the photos</source>
      <translation>Speicher der Fotos</translation>
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
      <source>take it back from a second copy: ptmark archive repair --from FOLDER</source>
      <translation>holen Sie es aus einer zweiten Kopie: ptmark archive repair --from FOLDER</translation>
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
      <source>the newest {0:,} of them {1}</source>
      <translation>davon die neuesten {0:,}, {1}</translation>
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
      <source>the photo is missing</source>
      <translation>das Foto fehlt</translation>
    </message>
    <message>
      <source>the photo is missing or cannot be read: see “State of the archive …”</source>
      <translation>das Foto fehlt oder ist nicht lesbar: siehe „Zustand des Archivs …“</translation>
    </message>
    <message>
      <source>the photo to be evaluated; the longest where they differ</source>
      <translation>das auszuwertende Foto; das längste, wo sie abweichen</translation>
    </message>
    <message>
      <source>the photo was changed</source>
      <translation>das Foto wurde verändert</translation>
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
      <source>the record was changed since it was opened or saved here</source>
      <translation>das Protokoll wurde geändert, seit er hier geöffnet oder gespeichert wurde</translation>
    </message>
    <message>
      <source>the review in it does not fit: {0!r}</source>
      <translation>die Gegenprüfung darin passt nicht: {0!r}</translation>
    </message>
    <message>
      <source>the same part number again</source>
      <translation>dieselbe Teilenummer noch einmal</translation>
    </message>
    <message>
      <source>the surest; the longest where they differ</source>
      <translation>das sicherste; das längste, wo sie abweichen</translation>
    </message>
    <message>
      <source>the whole area: mark out a smaller one, or trace by hand</source>
      <translation>der ganze Bereich: einen kleineren markieren oder von Hand zeichnen</translation>
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
      <source>turn to it (‹Ctrl+PgDown›), or add it again</source>
      <translation>dorthin blättern (‹Ctrl+PgDown›) oder es neu hinzufügen</translation>
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
      <source>was taken earlier and shows less</source>
      <translation>wurde früher aufgenommen und zeigt weniger</translation>
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
      <source>where a rule needs it, such as {0}</source>
      <translation>wo eine Regel es braucht, etwa {0}</translation>
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
      <source>{0:g} to {1:g} min.</source>
      <translation>{0:g} bis {1:g} min.</translation>
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
      <source>{0} again</source>
      <translation>{0} noch einmal</translation>
    </message>
    <message>
      <source>{0} again, another serial</source>
      <translation>{0} noch einmal, andere Seriennummer</translation>
    </message>
    <message>
      <source>{0} again, serial {1}</source>
      <translation>{0} noch einmal, Seriennummer {1}</translation>
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
      <source>{0} bundles were refused:</source>
      <translation>{0} Bündel wurden abgelehnt:</translation>
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
      <source>{0} indications, the longest {1}</source>
      <translation>{0} Anzeigen, die längste {1}</translation>
    </message>
    <message>
      <source>{0} is the key of “{1}” already</source>
      <translation>{0} ist schon die Taste von „{1}“</translation>
    </message>
    <message>
      <source>{0} is the original, byte for byte. SHA-256 {1}</source>
      <translation>{0} ist das Original, Byte für Byte. SHA-256 {1}</translation>
    </message>
    <message>
      <source>{0} it is.</source>
      <translation>{0} ist es.</translation>
    </message>
    <message>
      <source>{0} more photos</source>
      <translation>{0} weitere Fotos</translation>
    </message>
    <message>
      <source>{0} more, less like dye …</source>
      <translation>{0} weitere, der Farbe weniger ähnlich …</translation>
    </message>
    <message>
      <source>{0} of more than {1}</source>
      <translation>{0} von mehr als {1}</translation>
    </message>
    <message>
      <source>{0} of {1}</source>
      <translation>{0} von {1}</translation>
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
      <source>{0} of {1} wait for a review.</source>
      <translation>{0} von {1} warten auf eine Gegenprüfung.</translation>
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
      <source>{0} records of {1} were taken in, with their photos.</source>
      <translation>{0} von {1} Protokollen wurden aufgenommen, mit ihren Fotos.</translation>
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
      <source>{0} · counted on</source>
      <translation>{0} · weitergezählt</translation>
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
      <source>{0}, along its path {1}, area {2}. Standard uncertainties of the length, of which U is twice the root of the sum of squares:</source>
      <translation>{0}, längs seines Wegs {1}, Fläche {2}. Standardunsicherheiten der Länge, von denen U das Doppelte der Wurzel aus der Quadratsumme ist:</translation>
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
      <source>{0}, serial {1}, tested on {2}: {3}</source>
      <translation>{0}, Seriennummer {1}, geprüft am {2}: {3}</translation>
    </message>
    <message>
      <source>{0}, serial {1}: read it on the part.</source>
      <translation>{0}, Seriennummer {1}: am Teil ablesen.</translation>
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
      <source>{0}: deleted.</source>
      <translation>{0}: gelöscht.</translation>
    </message>
    <message>
      <source>{0}: no record in it. Drop photos themselves, not their folder.</source>
      <translation>{0}: kein Protokoll darin. Die Fotos selbst ablegen, nicht ihren Ordner.</translation>
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
      <source>{0}: taken as {1}</source>
      <translation>{0}: übernommen als {1}</translation>
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
      <source>{0}{1}, {2}, {3}, {4} indications</source>
      <translation>{0}{1}, {2}, {3}, {4} Anzeigen</translation>
    </message>
    <message>
      <source>{0}{1}, {2}.</source>
      <translation>{0}{1}, {2}.</translation>
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
      <source>‹Ctrl+S› saves record, image and PDF beside each other. ‹F7› goes to the next heading.</source>
      <translation>‹Ctrl+S› speichert Protokoll, Bild und PDF nebeneinander. ‹F7› geht zur nächsten Überschrift.</translation>
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
    <name>core</name>
    <message>
      <source>'{0!s}' are not numbers</source>
      <translation>„{0!s}“ sind keine Zahlen</translation>
    </message>
    <message>
      <source>'{0!s}' by '{1!s}' is no review</source>
      <translation>„{0!s}“ von „{1!s}“ ist keine Gegenprüfung</translation>
    </message>
    <message>
      <source>'{0!s}' cannot be a profile's name</source>
      <translation>„{0!s}“ kann kein Profil heißen</translation>
    </message>
    <message>
      <source>'{0!s}' divides by zero</source>
      <translation>„{0!s}“ teilt durch null</translation>
    </message>
    <message>
      <source>'{0!s}' has no operator (&gt;, &gt;=, &lt;, &lt;=) before its amount</source>
      <translation>„{0!s}“ hat keinen Operator (&gt;, &gt;=, &lt;, &lt;=) vor der Größe</translation>
    </message>
    <message>
      <source>'{0!s}' is a template whose figures are to be filled in from the contract</source>
      <translation>„{0!s}“ ist eine Vorlage, deren Werte nach dem Vertrag auszufüllen sind</translation>
    </message>
    <message>
      <source>'{0!s}' is a thousand times more to those who part thousands by a comma</source>
      <translation>„{0!s}“ ist für den, der Tausender mit Komma trennt, tausendmal mehr</translation>
    </message>
    <message>
      <source>'{0!s}' is no ISO 6520-1 name or number</source>
      <translation>„{0!s}“ ist kein Name und keine Nummer der ISO 6520-1</translation>
    </message>
    <message>
      <source>'{0!s}' is no decision rule</source>
      <translation>„{0!s}“ ist keine Entscheidungsregel</translation>
    </message>
    <message>
      <source>'{0!s}' is no known standard</source>
      <translation>„{0!s}“ ist keine bekannte Norm</translation>
    </message>
    <message>
      <source>'{0!s}' is no name for a profile</source>
      <translation>„{0!s}“ ist kein Name für ein Profil</translation>
    </message>
    <message>
      <source>'{0!s}' is no query</source>
      <translation>„{0!s}“ ist keine Abfrage</translation>
    </message>
    <message>
      <source>'{0!s}' is no role</source>
      <translation>„{0!s}“ ist keine Rolle</translation>
    </message>
    <message>
      <source>'{0!s}' is no time</source>
      <translation>„{0!s}“ ist keine Zeit</translation>
    </message>
    <message>
      <source>'{0!s}' is no time window</source>
      <translation>„{0!s}“ ist kein Zeitfenster</translation>
    </message>
    <message>
      <source>'{0!s}' is not a kind of picture the report is written as</source>
      <translation>„{0!s}“ ist keine Bildart, in der der Bericht geschrieben wird</translation>
    </message>
    <message>
      <source>'{0!s}' is not a length</source>
      <translation>„{0!s}“ ist keine Länge</translation>
    </message>
    <message>
      <source>'{0!s}' is not a paper size</source>
      <translation>„{0!s}“ ist kein Papierformat</translation>
    </message>
    <message>
      <source>'{0!s}' is not above zero</source>
      <translation>„{0!s}“ liegt nicht über null</translation>
    </message>
    <message>
      <source>'{0!s}' is not an amount with a unit</source>
      <translation>„{0!s}“ ist keine Größe mit Einheit</translation>
    </message>
    <message>
      <source>'{0!s}' is the name of a shipped profile</source>
      <translation>„{0!s}“ heißt ein mitgeliefertes Profil</translation>
    </message>
    <message>
      <source>'{0!s}' is there already</source>
      <translation>„{0!s}“ gibt es schon</translation>
    </message>
    <message>
      <source>'{0!s}' is unknown</source>
      <translation>„{0!s}“ ist unbekannt</translation>
    </message>
    <message>
      <source>'{0!s}' is used twice</source>
      <translation>„{0!s}“ ist doppelt vergeben</translation>
    </message>
    <message>
      <source>'{0!s}' is {1}</source>
      <translation>„{0!s}“ ist {1}</translation>
    </message>
    <message>
      <source>'{0!s}' looks at several indications at once</source>
      <translation>„{0!s}“ betrachtet mehrere Anzeigen zugleich</translation>
    </message>
    <message>
      <source>'{0!s}' looks at several indications at once and cannot exempt</source>
      <translation>„{0!s}“ betrachtet mehrere Anzeigen zugleich und kann nicht ausnehmen</translation>
    </message>
    <message>
      <source>'{0!s}' must be positive</source>
      <translation>„{0!s}“ muss positiv sein</translation>
    </message>
    <message>
      <source>'{0!s}' named '{1!s}' cannot sign</source>
      <translation>„{0!s}“ namens „{1!s}“ kann nicht unterschreiben</translation>
    </message>
    <message>
      <source>'{0!s}' says nothing to act on</source>
      <translation>„{0!s}“ sagt nicht, was zu tun ist</translation>
    </message>
    <message>
      <source>'{0!s}' would exempt itself, so nothing could hit it</source>
      <translation>„{0!s}“ würde sich selbst ausnehmen, so könnte nichts sie treffen</translation>
    </message>
    <message>
      <source>'{0!s}…' has too many digits</source>
      <translation>„{0!s}…“ hat zu viele Ziffern</translation>
    </message>
    <message>
      <source>(at end of document)</source>
      <translation>(am Ende des Dokuments)</translation>
    </message>
    <message>
      <source>(counting those {0})</source>
      <translation>(gezählt nur die {0})</translation>
    </message>
    <message>
      <source>(not sure)</source>
      <translation>(nicht sicher)</translation>
    </message>
    <message>
      <source>1 indication</source>
      <translation>1 Anzeige</translation>
    </message>
    <message>
      <source>1 linear indication</source>
      <translation>1 linienartige Anzeige</translation>
    </message>
    <message>
      <source>1 rounded indication</source>
      <translation>1 nicht linienartige Anzeige</translation>
    </message>
    <message>
      <source>1/16 in</source>
      <translation>1/16 in</translation>
    </message>
    <message>
      <source>1/2 mm</source>
      <translation>1/2 mm</translation>
    </message>
    <message>
      <source>1/32 in</source>
      <translation>1/32 in</translation>
    </message>
    <message>
      <source>1/64 in</source>
      <translation>1/64 in</translation>
    </message>
    <message>
      <source>136.4.4 as carried in UFGS 15216N, 3.5.3</source>
      <translation>136.4.4 nach UFGS 15216N, 3.5.3</translation>
    </message>
    <message>
      <source>1998 and 2016</source>
      <translation>1998 und 2016</translation>
    </message>
    <message>
      <source>2013; the same figures seen for 2017</source>
      <translation>2013; dieselben Werte für 2017 gesehen</translation>
    </message>
    <message>
      <source>2015 (shape rule seen in 2006)</source>
      <translation>2015 (Formregel in 2006 gesehen)</translation>
    </message>
    <message>
      <source>2020 (Table 6.1 in earlier editions)</source>
      <translation>2020 (in früheren Ausgaben Tabelle 6.1)</translation>
    </message>
    <message>
      <source>6.1.2; AP, single, for the level and wall</source>
      <translation>6.1.2; AP, einzeln, für Stufe und Wanddicke</translation>
    </message>
    <message>
      <source>9.3.9, clusters and scattered pores</source>
      <translation>9.3.9, Porennester und verstreute Poren</translation>
    </message>
    <message>
      <source>9.3.9, share of the thinner wall</source>
      <translation>9.3.9, Anteil der dünneren Wand</translation>
    </message>
    <message>
      <source>9.3.9, single pore</source>
      <translation>9.3.9, einzelne Pore</translation>
    </message>
    <message>
      <source>9.4.1.2, taken over to 9.5</source>
      <translation>9.4.1.2, übernommen in 9.5</translation>
    </message>
    <message>
      <source>A distance</source>
      <translation>Ein Abstand</translation>
    </message>
    <message>
      <source>A length</source>
      <translation>Eine Länge</translation>
    </message>
    <message>
      <source>A linear indication is judged by what the interpreter says it is: name it by its kind; until then it is left open.</source>
      <translation>Eine linienartige Anzeige wird danach bewertet, was der Auswertende darin sieht: nach ihrer Art benennen; bis dahin bleibt sie offen.</translation>
    </message>
    <message>
      <source>A pore that only reaches into the stretch of weld counts whole, at the worst place.</source>
      <translation>Eine Pore, die nur in den Nahtabschnitt hineinreicht, zählt ganz, an der ungünstigsten Stelle.</translation>
    </message>
    <message>
      <source>A table of limits by thickness or diameter, in place of one limit</source>
      <translation>Eine Tabelle der Grenzen nach Dicke oder Durchmesser, statt einer Grenze</translation>
    </message>
    <message>
      <source>A tighter standard named in the contract takes the place of these limits (8-4).</source>
      <translation>Eine strengere Norm, die der Vertrag nennt, tritt an die Stelle dieser Grenzen (8-4).</translation>
    </message>
    <message>
      <source>A veil of light lies over the photo: the card's black shows {0} % of its white, and faint indications may be lost in it.</source>
      <translation>Ein Lichtschleier liegt über dem Foto: Das Schwarz der Karte zeigt {0} % ihres Weiß, und schwache Anzeigen können darin untergehen.</translation>
    </message>
    <message>
      <source>A weld is named, but not the height of its crown: 0 to 2 mm is assumed, and on a higher crown a length across it may be off by more than its U.</source>
      <translation>Eine Schweißnaht ist genannt, aber nicht ihre Überhöhung: 0 bis 2 mm sind angenommen; bei größerer Überhöhung kann eine Länge quer dazu um mehr als ihr U falsch sein.</translation>
    </message>
    <message>
      <source>API 1104 pipeline girth welds: penetrant testing (SI figures)</source>
      <translation>API 1104 Rundnähte von Rohrleitungen: Eindringprüfung (SI-Werte)</translation>
    </message>
    <message>
      <source>API 1104 pipeline girth welds: penetrant testing (US customary figures)</source>
      <translation>API 1104 Rundnähte von Rohrleitungen: Eindringprüfung (Werte in US-Einheiten)</translation>
    </message>
    <message>
      <source>ASME B31.1 power piping, 136.4.4: penetrant examination (SI figures)</source>
      <translation>ASME B31.1 Kraftwerksrohrleitungen, 136.4.4: Eindringprüfung (SI-Werte)</translation>
    </message>
    <message>
      <source>ASME B31.1 power piping, 136.4.4: penetrant examination (US customary figures)</source>
      <translation>ASME B31.1 Kraftwerksrohrleitungen, 136.4.4: Eindringprüfung (Werte in US-Einheiten)</translation>
    </message>
    <message>
      <source>ASME B31.3 process piping, 344.4: penetrant examination (SI figures)</source>
      <translation>ASME B31.3 Prozessrohrleitungen, 344.4: Eindringprüfung (SI-Werte)</translation>
    </message>
    <message>
      <source>ASME B31.3 process piping, 344.4: penetrant examination (US customary figures)</source>
      <translation>ASME B31.3 Prozessrohrleitungen, 344.4: Eindringprüfung (Werte in US-Einheiten)</translation>
    </message>
    <message>
      <source>ASME BPVC Section III, NB-5350: penetrant acceptance standards (SI figures)</source>
      <translation>ASME BPVC Section III, NB-5350: Zulässigkeit bei der Eindringprüfung (SI-Werte)</translation>
    </message>
    <message>
      <source>ASME BPVC Section III, NB-5350: penetrant acceptance standards (US customary figures)</source>
      <translation>ASME BPVC Section III, NB-5350: Zulässigkeit bei der Eindringprüfung (Werte in US-Einheiten)</translation>
    </message>
    <message>
      <source>ASME BPVC Section V, Article 6: Table T-672 (2007 edition), 10 to 52 °C; T-676.1. Second-hand figures; the 2 h limit of the dwell is from a weak source.</source>
      <translation>ASME BPVC Section V, Article 6: Tabelle T-672 (Ausgabe 2007), 10 bis 52 °C; T-676.1. Werte aus zweiter Hand; die Grenze von 2 h für die Eindringzeit stammt aus einer schwachen Quelle.</translation>
    </message>
    <message>
      <source>ASME BPVC Section V:2021, Article 6, T-692</source>
      <translation>ASME BPVC Section V:2021, Article 6, T-692</translation>
    </message>
    <message>
      <source>ASME BPVC Section VIII Division 1, Appendix 8: penetrant examination (SI figures)</source>
      <translation>ASME BPVC Section VIII Division 1, Appendix 8: Eindringprüfung (SI-Werte)</translation>
    </message>
    <message>
      <source>ASME BPVC Section VIII Division 1, Appendix 8: penetrant examination (US customary figures)</source>
      <translation>ASME BPVC Section VIII Division 1, Appendix 8: Eindringprüfung (Werte in US-Einheiten)</translation>
    </message>
    <message>
      <source>ASME BPVC V, T-676.1 (from a secondary source)</source>
      <translation>ASME BPVC V, T-676.1 (aus zweiter Hand)</translation>
    </message>
    <message>
      <source>ASME V, Article 6, T-652, second-hand</source>
      <translation>ASME V, Article 6, T-652, aus zweiter Hand</translation>
    </message>
    <message>
      <source>ASME V, Article 6, T-676, second-hand</source>
      <translation>ASME V, Article 6, T-676, aus zweiter Hand</translation>
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
      <source>ASTM E1417/E1417M-21, record of results</source>
      <translation>ASTM E1417/E1417M-21, Aufzeichnung der Ergebnisse</translation>
    </message>
    <message>
      <source>ASTM E165/E165M-18, examination record</source>
      <translation>ASTM E165/E165M-18, Prüfaufzeichnung</translation>
    </message>
    <message>
      <source>AWS D1.1 piping porosity, complete penetration butt welds across the tension (SI figures)</source>
      <translation>AWS D1.1 Schlauchporen, durchgeschweißte Stumpfnähte quer zum Zug (SI-Werte)</translation>
    </message>
    <message>
      <source>AWS D1.1 piping porosity, complete penetration butt welds across the tension (US customary figures)</source>
      <translation>AWS D1.1 Schlauchporen, durchgeschweißte Stumpfnähte quer zum Zug (Werte in US-Einheiten)</translation>
    </message>
    <message>
      <source>AWS D1.1 piping porosity, fillet welds of stiffeners to webs, cyclic (SI figures)</source>
      <translation>AWS D1.1 Schlauchporen, Kehlnähte von Steifen an Stegen, Wechsellast (SI-Werte)</translation>
    </message>
    <message>
      <source>AWS D1.1 piping porosity, fillet welds of stiffeners to webs, cyclic (US customary figures)</source>
      <translation>AWS D1.1 Schlauchporen, Kehlnähte von Steifen an Stegen, Wechsellast (Werte in US-Einheiten)</translation>
    </message>
    <message>
      <source>AWS D1.1 piping porosity, fillet welds, cyclic (SI figures)</source>
      <translation>AWS D1.1 Schlauchporen, Kehlnähte, Wechsellast (SI-Werte)</translation>
    </message>
    <message>
      <source>AWS D1.1 piping porosity, fillet welds, cyclic (US customary figures)</source>
      <translation>AWS D1.1 Schlauchporen, Kehlnähte, Wechsellast (Werte in US-Einheiten)</translation>
    </message>
    <message>
      <source>AWS D1.1 piping porosity, other groove welds and fillets, static (SI figures)</source>
      <translation>AWS D1.1 Schlauchporen, sonstige Stumpf- und Kehlnähte, ruhende Last (SI-Werte)</translation>
    </message>
    <message>
      <source>AWS D1.1 piping porosity, other groove welds and fillets, static (US customary figures)</source>
      <translation>AWS D1.1 Schlauchporen, sonstige Stumpf- und Kehlnähte, ruhende Last (Werte in US-Einheiten)</translation>
    </message>
    <message>
      <source>AWS D1.1 piping porosity, other groove welds, cyclic (SI figures)</source>
      <translation>AWS D1.1 Schlauchporen, sonstige Stumpfnähte, Wechsellast (SI-Werte)</translation>
    </message>
    <message>
      <source>AWS D1.1 piping porosity, other groove welds, cyclic (US customary figures)</source>
      <translation>AWS D1.1 Schlauchporen, sonstige Stumpfnähte, Wechsellast (Werte in US-Einheiten)</translation>
    </message>
    <message>
      <source>Adobe RGB (1998)</source>
      <translation>Adobe RGB (1998)</translation>
    </message>
    <message>
      <source>All of</source>
      <translation>Alle aus</translation>
    </message>
    <message>
      <source>All {0} indications are set aside by the inspector, with reasons.</source>
      <translation>Alle {0} Anzeigen hat der Prüfer mit Gründen ausgenommen.</translation>
    </message>
    <message>
      <source>An end may be covered: {0}. Its sizes are the least that they can be; uncover and develop all of it, and take another photo.</source>
      <translation>Ein Ende kann verdeckt sein: {0}. Die Maße sind die kleinsten, die sie sein können; alles freilegen und entwickeln und ein weiteres Foto aufnehmen.</translation>
    </message>
    <message>
      <source>An indication below the recording level is not recorded and not judged, except one named as a crack.</source>
      <translation>Eine Anzeige unter der Registriergrenze wird nicht aufgenommen und nicht bewertet, außer sie ist als Riss benannt.</translation>
    </message>
    <message>
      <source>An indication meets {0} as measured, but not for certain within U.</source>
      <translation>Eine Anzeige erfüllt {0} wie gemessen, aber innerhalb von U nicht sicher.</translation>
    </message>
    <message>
      <source>An indication named as a crack is not passed by its size alone: the inspector must decide it</source>
      <translation>Eine als Riss benannte Anzeige besteht nicht allein nach ihrer Größe: Der Prüfer muss entscheiden</translation>
    </message>
    <message>
      <source>And {0} more.</source>
      <translation>Und {0} weitere.</translation>
    </message>
    <message>
      <source>Any of</source>
      <translation>Eine aus</translation>
    </message>
    <message>
      <source>Area of the rectangle at most</source>
      <translation>Fläche des Rechtecks höchstens</translation>
    </message>
    <message>
      <source>Area, mm²</source>
      <translation>Fläche, mm²</translation>
    </message>
    <message>
      <source>At most {0}; {1}.</source>
      <translation>Höchstens {0}; {1}.</translation>
    </message>
    <message>
      <source>At worst {0}; {1}. {2}</source>
      <translation>Im ungünstigsten Fall {0}; {1}. {2}</translation>
    </message>
    <message>
      <source>Below 10 °C the least dwell is doubled (Table T-672, 2007 edition).</source>
      <translation>Unter 10 °C verdoppelt sich die kürzeste Eindringzeit (Tabelle T-672, Ausgabe 2007).</translation>
    </message>
    <message>
      <source>Bleed-out over time is not plotted: {0}.</source>
      <translation>Das Ausbluten über die Zeit wird nicht gezeichnet: {0}.</translation>
    </message>
    <message>
      <source>CEN/TS 17100:2017, photographs as penetrant records</source>
      <translation>CEN/TS 17100:2017, Fotos als Aufzeichnung der Eindringprüfung</translation>
    </message>
    <message>
      <source>CMYK without a colour profile: the colours are only roughly right.</source>
      <translation>CMYK ohne Farbprofil: Die Farben stimmen nur ungefähr.</translation>
    </message>
    <message>
      <source>Calibration was due on {0}, before the examination ({1}).</source>
      <translation>Kalibrierung war fällig am {0}, vor der Prüfung ({1}).</translation>
    </message>
    <message>
      <source>Cannot be told: {0}; {1}.</source>
      <translation>Nicht zu sagen: {0}; {1}.</translation>
    </message>
    <message>
      <source>Check the drive and the name</source>
      <translation>Laufwerk und Namen prüfen</translation>
    </message>
    <message>
      <source>Check the name and the folder</source>
      <translation>Namen und Ordner prüfen</translation>
    </message>
    <message>
      <source>Checked on {0}, more than a year before the examination ({1}); near vision is checked each year (ISO 9712, from memory).</source>
      <translation>Geprüft am {0}, mehr als ein Jahr vor der Prüfung ({1}); die Sehschärfe in der Nähe wird jährlich geprüft (ISO 9712, aus dem Gedächtnis).</translation>
    </message>
    <message>
      <source>Choose a picture file</source>
      <translation>Eine Bilddatei wählen</translation>
    </message>
    <message>
      <source>Choose a picture in it</source>
      <translation>Ein Bild darin wählen</translation>
    </message>
    <message>
      <source>Choose the kind of penetrant and look again, or take the photo with the white balance set to the light in use.</source>
      <translation>Die Art des Eindringmittels wählen und erneut suchen, oder das Foto mit einem Weißabgleich aufnehmen, der auf das verwendete Licht eingestellt ist.</translation>
    </message>
    <message>
      <source>Class tables differ in what they call an indication's size and in the area it is counted on: read the notes of the table.</source>
      <translation>Klassentabellen unterscheiden sich darin, was sie Größe einer Anzeige nennen und auf welcher Fläche gezählt wird: die Anmerkungen der Tabelle lesen.</translation>
    </message>
    <message>
      <source>Clean the lens, keep lamps and windows out of it, and take the photo again.</source>
      <translation>Das Objektiv reinigen, Lampen und Fenster davon fernhalten und das Foto noch einmal aufnehmen.</translation>
    </message>
    <message>
      <source>Close other programs, or take the photo with fewer pixels</source>
      <translation>Andere Programme schließen oder das Foto mit weniger Pixeln aufnehmen</translation>
    </message>
    <message>
      <source>Coloured light: the developer does not look white, and dye may pass for rust or ink, or not show at all.</source>
      <translation>Farbiges Licht: Der Entwickler sieht nicht weiß aus, und Farbstoff kann als Rost oder Tinte gelten oder gar nicht zu sehen sein.</translation>
    </message>
    <message>
      <source>Common practice, no source; temperature and light as in ISO 3452-1 and ISO 3059.</source>
      <translation>Übliche Praxis, ohne Quelle; Temperatur und Licht wie in ISO 3452-1 und ISO 3059.</translation>
    </message>
    <message>
      <source>Copy the original again from the camera or phone</source>
      <translation>Das Original noch einmal von Kamera oder Telefon kopieren</translation>
    </message>
    <message>
      <source>Develop it to JPEG, or to 8- or 16-bit RGB TIFF</source>
      <translation>Als JPEG oder als TIFF in RGB mit 8 oder 16 Bit entwickeln</translation>
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
      <source>Developer on</source>
      <translation>Entwickler auf</translation>
    </message>
    <message>
      <source>Development time</source>
      <translation>Entwicklungszeit</translation>
    </message>
    <message>
      <source>Display P3</source>
      <translation>Display P3</translation>
    </message>
    <message>
      <source>Distance from an edge</source>
      <translation>Abstand von einer Kante</translation>
    </message>
    <message>
      <source>Draw along the dye and leave the clean middle out.</source>
      <translation>Entlang der Farbe zeichnen und die saubere Mitte auslassen.</translation>
    </message>
    <message>
      <source>Dropped by a person and not judged: {0}. Reason: {1!s}</source>
      <translation>Von einer Person verworfen und nicht bewertet: {0}. Grund: {1!s}</translation>
    </message>
    <message>
      <source>Dropped without a reason and not judged: {0}. Give the reason.</source>
      <translation>Ohne Grund verworfen und nicht bewertet: {0}. Den Grund angeben.</translation>
    </message>
    <message>
      <source>Dry to the eye</source>
      <translation>Sichtbar trocken</translation>
    </message>
    <message>
      <source>Dwell time</source>
      <translation>Eindringzeit</translation>
    </message>
    <message>
      <source>EN 10228-2 quality class 1: penetrant testing of steel forgings</source>
      <translation>EN 10228-2 Güteklasse 1: Eindringprüfung von Schmiedestücken aus Stahl</translation>
    </message>
    <message>
      <source>EN 10228-2 quality class 2: penetrant testing of steel forgings</source>
      <translation>EN 10228-2 Güteklasse 2: Eindringprüfung von Schmiedestücken aus Stahl</translation>
    </message>
    <message>
      <source>EN 10228-2 quality class 3: penetrant testing of steel forgings</source>
      <translation>EN 10228-2 Güteklasse 3: Eindringprüfung von Schmiedestücken aus Stahl</translation>
    </message>
    <message>
      <source>EN 10228-2 quality class 4: penetrant testing of steel forgings</source>
      <translation>EN 10228-2 Güteklasse 4: Eindringprüfung von Schmiedestücken aus Stahl</translation>
    </message>
    <message>
      <source>EN 1371-1 castings, penetrant testing: one severity level</source>
      <translation>EN 1371-1 Gussstücke, Eindringprüfung: eine Gütestufe</translation>
    </message>
    <message>
      <source>Each indication is to be called relevant, non-relevant or false (344.4.2).</source>
      <translation>Jede Anzeige ist als relevant, nicht relevant oder falsch zu benennen (344.4.2).</translation>
    </message>
    <message>
      <source>Each photo is judged on its own surface: rules over a length of weld, an area or a row of indications do not count those of different photos together.</source>
      <translation>Jedes Foto wird auf seiner eigenen Oberfläche bewertet: Regeln über eine Nahtlänge, eine Fläche oder eine Reihe von Anzeigen zählen die verschiedener Fotos nicht zusammen.</translation>
    </message>
    <message>
      <source>Editions before about 2014 had a shorter text that names cracks only (memory).</source>
      <translation>Ausgaben vor etwa 2014 hatten einen kürzeren Text, der nur Risse nennt (aus dem Gedächtnis).</translation>
    </message>
    <message>
      <source>Emulsifier batch</source>
      <translation>Charge des Emulgators</translation>
    </message>
    <message>
      <source>Ends at the photo's edge: {0}. Its sizes are the least that they can be; take another photo that shows it whole.</source>
      <translation>Endet am Bildrand: {0}. Die Maße sind die kleinstmöglichen; ein weiteres Foto aufnehmen, das die ganze Anzeige zeigt.</translation>
    </message>
    <message>
      <source>Ends where the developer ends, at a rule, a tape or bare metal: {0}. What lies beyond is not measured.</source>
      <translation>Endet, wo der Entwickler endet, an einem Lineal, einem Band oder blankem Metall: {0}. Was dahinter liegt, ist nicht gemessen.</translation>
    </message>
    <message>
      <source>Every indication that the inspector has named so (ISO 6520-1)</source>
      <translation>Jede Anzeige, die der Prüfer so benannt hat (ISO 6520-1)</translation>
    </message>
    <message>
      <source>Every relevant indication of a shape</source>
      <translation>Jede relevante Anzeige einer Form</translation>
    </message>
    <message>
      <source>Examiner's certificate</source>
      <translation>Zertifikat des Prüfers</translation>
    </message>
    <message>
      <source>Exempt, since an indication meets {0}.</source>
      <translation>Ausgenommen, da eine Anzeige {0} erfüllt.</translation>
    </message>
    <message>
      <source>Expose less, until the brightest indication keeps its colour, or move the lamp away.</source>
      <translation>Knapper belichten, bis die hellste Anzeige ihre Farbe behält, oder die Lampe weiter weg stellen.</translation>
    </message>
    <message>
      <source>Far from the scale reference: {0}, up to {1} mm away where it is {2} mm large. The scale is several times less sure there, as U says. Lay the reference beside the indications.</source>
      <translation>Weit von der Maßstabsreferenz: {0}, bis zu {1} mm entfernt, wo sie {2} mm groß ist. Der Maßstab ist dort mehrfach unsicherer, wie U sagt. Die Referenz neben die Anzeigen legen.</translation>
    </message>
    <message>
      <source>Figures {0}; check them in the standard: {1!s}.</source>
      <translation>Werte {0}; in der Norm nachprüfen: {1!s}.</translation>
    </message>
    <message>
      <source>Final look</source>
      <translation>Letzte Betrachtung</translation>
    </message>
    <message>
      <source>Fluorescent: the photo cannot show that the light was right. Usual limits are UV-A of at least 10 W/m2 (1000 uW/cm2) at the surface and white light of at most 20 lx there (2 fc); the standard of the contract governs.</source>
      <translation>Fluoreszierend: Das Foto kann nicht zeigen, dass das Licht richtig war. Üblich sind UV-A von mindestens 10 W/m2 (1000 uW/cm2) an der Oberfläche und weißes Licht von höchstens 20 lx dort (2 fc); es gilt die Norm des Vertrags.</translation>
    </message>
    <message>
      <source>Follow the procedure: clean the surface again, with the remover on the cloth and not on the part, apply penetrant and developer anew, and repeat the examination where it matters.</source>
      <translation>Der Verfahrensanweisung folgen: die Oberfläche noch einmal reinigen, mit dem Zwischenreiniger auf dem Tuch und nicht auf dem Teil, Eindringmittel und Entwickler neu auftragen und die Prüfung wiederholen, wo es darauf ankommt.</translation>
    </message>
    <message>
      <source>Follow the procedure: take the excess penetrant off again, under UV-A until the background is dark, apply developer anew, and repeat the examination where it matters.</source>
      <translation>Der Verfahrensanweisung folgen: das überschüssige Eindringmittel noch einmal entfernen, unter UV-A, bis der Untergrund dunkel ist, Entwickler neu auftragen und die Prüfung wiederholen, wo es darauf ankommt.</translation>
    </message>
    <message>
      <source>For all that is known the outlines touch or overlap: {0}. Trace as one what is one indication. Judged as one: {1}</source>
      <translation>Soweit bekannt, berühren oder überdecken sich die Umrisse: {0}. Als eine nachzeichnen, was eine Anzeige ist. Als eine bewertet: {1}</translation>
    </message>
    <message>
      <source>Gap between neighbours, edge to edge</source>
      <translation>Abstand der Nachbarn, von Rand zu Rand</translation>
    </message>
    <message>
      <source>Gap in lengths of the smaller one</source>
      <translation>Abstand in Längen der kleineren</translation>
    </message>
    <message>
      <source>Give the height of the indications above the surface, 0 where the weld is flat.</source>
      <translation>Die Höhe der Anzeigen über der Oberfläche angeben, 0 wo die Naht eben ist.</translation>
    </message>
    <message>
      <source>Give the wall thickness: the limits of linear and aligned indications depend on it. Its bands are from memory.</source>
      <translation>Die Wanddicke angeben: Die Grenzen linienartiger und aufgereihter Anzeigen hängen von ihr ab. Ihre Stufen sind aus dem Gedächtnis.</translation>
    </message>
    <message>
      <source>Give yourself the right to read it</source>
      <translation>Sich das Leserecht geben</translation>
    </message>
    <message>
      <source>Glare covers {0} % of the examined area, and nothing can be seen there.</source>
      <translation>Glanz bedeckt {0} % des Prüfbereichs, und dort ist nichts zu sehen.</translation>
    </message>
    <message>
      <source>Go closer, or take several photos, so that it is at least {0}; in place of a copy that was sent or scaled, use the photo as the camera wrote it.</source>
      <translation>Näher herangehen oder mehrere Fotos aufnehmen, sodass es mindestens {0} sind; statt einer Kopie, die verschickt oder verkleinert wurde, das Foto nehmen, wie die Kamera es geschrieben hat.</translation>
    </message>
    <message>
      <source>Gone</source>
      <translation>Fort</translation>
    </message>
    <message>
      <source>Gone holds only where the photo after shows the place bare and under developer: a cover as white as developer is not seen.</source>
      <translation>„Fort“ gilt nur, wo das Foto danach die Stelle frei und unter Entwickler zeigt: Was sie weiß wie Entwickler bedeckt, wird nicht erkannt.</translation>
    </message>
    <message>
      <source>Gone: {0}.</source>
      <translation>Fort: {0}.</translation>
    </message>
    <message>
      <source>Hold the camera still, let it focus on the developer, and take the photo again.</source>
      <translation>Die Kamera ruhig halten, auf den Entwickler scharf stellen lassen und das Foto noch einmal aufnehmen.</translation>
    </message>
    <message>
      <source>Holds for parts of a size; judges nothing by itself, so only in a combination</source>
      <translation>Gilt für Teile einer Größe; bewertet allein nichts, also nur in einer Verknüpfung</translation>
    </message>
    <message>
      <source>Holds for parts whose {0} is {1}; judges nothing alone.</source>
      <translation>Gilt für Teile mit {0} {1}; bewertet allein nichts.</translation>
    </message>
    <message>
      <source>Holds where that size is</source>
      <translation>Gilt, wo diese Größe ist</translation>
    </message>
    <message>
      <source>Hollow: {0}. The outline's middle is as clean as the surface about it, but counts as dye: a ring or an arc is judged as a rounded indication.</source>
      <translation>Hohl: {0}. Die Mitte des Umrisses ist so sauber wie die Fläche ringsum, zählt aber als Farbe: Ein Ring oder Bogen wird als rundliche Anzeige beurteilt.</translation>
    </message>
    <message>
      <source>How many are too many</source>
      <translation>Wie viele zu viele sind</translation>
    </message>
    <message>
      <source>How many widths long makes an indication linear</source>
      <translation>Wie viele Breiten lang eine Anzeige linienartig macht</translation>
    </message>
    <message>
      <source>How near each indication lies to a free edge or another line of the scene</source>
      <translation>Wie nahe jede Anzeige an einer freien Kante oder einer anderen Linie liegt</translation>
    </message>
    <message>
      <source>How sure the figure is</source>
      <translation>Wie sicher der Wert ist</translation>
    </message>
    <message>
      <source>ISO 23277 acceptance level 1: penetrant testing of welds</source>
      <translation>ISO 23277 Zulässigkeitsgrenze 1: Eindringprüfung von Schweißnähten</translation>
    </message>
    <message>
      <source>ISO 23277 acceptance level 2: penetrant testing of welds</source>
      <translation>ISO 23277 Zulässigkeitsgrenze 2: Eindringprüfung von Schweißnähten</translation>
    </message>
    <message>
      <source>ISO 23277 acceptance level 2X: penetrant testing of welds, linear indications to level 1</source>
      <translation>ISO 23277 Zulässigkeitsgrenze 2X: Eindringprüfung von Schweißnähten, linienartige Anzeigen nach Grenze 1</translation>
    </message>
    <message>
      <source>ISO 23277 acceptance level 3: penetrant testing of welds</source>
      <translation>ISO 23277 Zulässigkeitsgrenze 3: Eindringprüfung von Schweißnähten</translation>
    </message>
    <message>
      <source>ISO 23277 acceptance level 3X: penetrant testing of welds, linear indications to level 1</source>
      <translation>ISO 23277 Zulässigkeitsgrenze 3X: Eindringprüfung von Schweißnähten, linienartige Anzeigen nach Grenze 1</translation>
    </message>
    <message>
      <source>ISO 3059, second-hand</source>
      <translation>ISO 3059, aus zweiter Hand</translation>
    </message>
    <message>
      <source>ISO 3452-1, 8.4.2 (2020 text): dwell, and never under the maker's time; 8.6: development, second-hand figures, longer by agreement.</source>
      <translation>ISO 3452-1, 8.4.2 (Text von 2020): Eindringzeit, nie unter der Angabe des Herstellers; 8.6: Entwicklung, Werte aus zweiter Hand, länger nach Vereinbarung.</translation>
    </message>
    <message>
      <source>ISO 3452-1:2021, 8.6 (from memory)</source>
      <translation>ISO 3452-1:2021, 8.6 (aus dem Gedächtnis)</translation>
    </message>
    <message>
      <source>ISO 3452-1:2021, test report</source>
      <translation>ISO 3452-1:2021, Prüfbericht</translation>
    </message>
    <message>
      <source>ISO 3452-6 is for colder surfaces, ISO 3452-5 for hotter ones.</source>
      <translation>Für kältere Oberflächen gilt ISO 3452-6, für heißere ISO 3452-5.</translation>
    </message>
    <message>
      <source>ISO 4987 steel castings, penetrant testing: one severity level</source>
      <translation>ISO 4987 Gussstücke aus Stahl, Eindringprüfung: eine Gütestufe</translation>
    </message>
    <message>
      <source>Ids of the rules it takes together</source>
      <translation>Kennungen der Regeln, die sie verknüpft</translation>
    </message>
    <message>
      <source>Ids of the rules that exempt; each looks at one indication or the part</source>
      <translation>Kennungen der ausnehmenden Regeln; jede betrachtet eine Anzeige oder das Teil</translation>
    </message>
    <message>
      <source>In a cluster</source>
      <translation>In einer Gruppe</translation>
    </message>
    <message>
      <source>In a line</source>
      <translation>In einer Reihe</translation>
    </message>
    <message>
      <source>In a stretch of weld</source>
      <translation>In einem Nahtabschnitt</translation>
    </message>
    <message>
      <source>In the worst area</source>
      <translation>In der ungünstigsten Fläche</translation>
    </message>
    <message>
      <source>Indication {0} ends at the photo's edge: it is at least {1} long. Take another photo that shows it whole.</source>
      <translation>Anzeige {0} endet am Bildrand: sie ist mindestens {1} lang. Ein weiteres Foto aufnehmen, das sie ganz zeigt.</translation>
    </message>
    <message>
      <source>Indication {0} ends where the developer ends, at a rule, a tape, the scale card or bare metal, and may go on there: it is at least {1} long. Uncover and develop all of it and take another photo; or, where you see that it ends there, trace it by hand.</source>
      <translation>Anzeige {0} endet, wo der Entwickler endet, an einem Lineal, einem Band, der Maßstabskarte oder blankem Metall, und kann dort weitergehen: sie ist mindestens {1} lang. Alles freilegen und entwickeln und ein weiteres Foto aufnehmen; oder, wo Sie sehen, dass sie dort endet, sie von Hand nachzeichnen.</translation>
    </message>
    <message>
      <source>Indication {0} is left open. {1}</source>
      <translation>Anzeige {0} bleibt offen. {1}</translation>
    </message>
    <message>
      <source>Indication {0} is named '{1!s}', which is no ISO 6520-1 name or number known here; name it by its number.</source>
      <translation>Anzeige {0} ist „{1!s}“ benannt, kein hier bekannter Name und keine Nummer der ISO 6520-1; mit der Nummer benennen.</translation>
    </message>
    <message>
      <source>Indication {0} is named {1}: {2} whatever its size.</source>
      <translation>Anzeige {0} ist benannt {1}: {2}, gleich welcher Größe.</translation>
    </message>
    <message>
      <source>Indication {0} is {1} ({2}), {3} long: {4} whatever its size.</source>
      <translation>Anzeige {0} ist {1} ({2}), {3} lang: {4}, gleich welcher Größe.</translation>
    </message>
    <message>
      <source>Indication {0} is {1} long, not {2}: not relevant.</source>
      <translation>Anzeige {0}: {1} lang, nicht {2}: nicht relevant.</translation>
    </message>
    <message>
      <source>Indication {0} lies on overexposed developer, which hides its rims and tails: it is at least {1} long. Take another photo with a lower exposure.</source>
      <translation>Anzeige {0} liegt auf überbelichtetem Entwickler, der ihre Ränder und Ausläufer verbirgt: sie ist mindestens {1} lang. Ein weiteres Foto mit geringerer Belichtung aufnehmen.</translation>
    </message>
    <message>
      <source>Indication {0} lies {1} from the {2}</source>
      <translation>Anzeige {0}: {1} Abstand von der Linie {2}</translation>
    </message>
    <message>
      <source>Indication {0} may meet {1}. What would decide it: a closer measurement.</source>
      <translation>Anzeige {0} erfüllt möglicherweise {1}. Es entscheiden würde: eine genauere Messung.</translation>
    </message>
    <message>
      <source>Indication {0} may meet {1}. What would decide it: {2}.</source>
      <translation>Anzeige {0} erfüllt möglicherweise {1}. Es entscheiden würde: {2}.</translation>
    </message>
    <message>
      <source>Indication {0} meets {1} ({2}): {3}.</source>
      <translation>Anzeige {0} erfüllt {1} ({2}): {3}.</translation>
    </message>
    <message>
      <source>Indication {0} stands in haze, rust, grain, a red reflection, beside paint or where the file lost its colour, so that its ends may not show: it is at least {1} long. Clean and test the part again and take another photo from nearby; or, where you see that it ends there, trace it by hand.</source>
      <translation>Anzeige {0} steht in Schleier, Rost, Rauschen, einem roten Widerschein, neben Lack oder wo die Datei ihre Farbe verloren hat, sodass ihre Enden vielleicht nicht zu sehen sind: sie ist mindestens {1} lang. Das Teil reinigen, noch einmal prüfen und ein weiteres Foto aus der Nähe aufnehmen; oder, wo Sie sehen, dass sie dort endet, sie von Hand nachzeichnen.</translation>
    </message>
    <message>
      <source>Indication {0} was not measured, and so not judged: the surface turns away too far there. Take another photo from that side.</source>
      <translation>Anzeige {0} wurde nicht gemessen und so nicht bewertet: Die Oberfläche wendet sich dort zu weit ab. Ein weiteres Foto von dieser Seite aufnehmen.</translation>
    </message>
    <message>
      <source>Install Pillow from its own wheels, or save the photo as JPEG or PNG</source>
      <translation>Pillow aus seinen eigenen Wheels installieren, oder das Foto als JPEG oder PNG speichern</translation>
    </message>
    <message>
      <source>It lies on the limit as measured, so that only another measurement can decide it.</source>
      <translation>Sie liegt, wie gemessen, auf der Grenze, so dass nur eine weitere Messung entscheiden kann.</translation>
    </message>
    <message>
      <source>It lies so near to the limit that only another measurement can pass it.</source>
      <translation>Sie liegt so nahe an der Grenze, dass nur eine weitere Messung sie bestehen lassen kann.</translation>
    </message>
    <message>
      <source>Its longer side at most</source>
      <translation>Seine längere Seite höchstens</translation>
    </message>
    <message>
      <source>JPEG of quality {0}</source>
      <translation>JPEG der Qualität {0}</translation>
    </message>
    <message>
      <source>JPEG with {0} bits a channel is not read</source>
      <translation>JPEG mit {0} Bit je Kanal wird nicht gelesen</translation>
    </message>
    <message>
      <source>JPEG, PNG, TIFF, WebP, HEIC and AVIF pictures are opened</source>
      <translation>Geöffnet werden Bilder in JPEG, PNG, TIFF, WebP, HEIC und AVIF</translation>
    </message>
    <message>
      <source>Judged apart by these criteria, though for all that is known the outlines touch or overlap: {0}. Trace as one what is one indication.</source>
      <translation>Nach diesen Kriterien getrennt bewertet, obwohl sich die Umrisse, soweit bekannt, berühren oder überdecken: {0}. Als eine nachzeichnen, was eine Anzeige ist.</translation>
    </message>
    <message>
      <source>Judged is only what is {0}; anything else is not relevant.</source>
      <translation>Bewertet wird nur, was {0} ist; alles andere ist nicht relevant.</translation>
    </message>
    <message>
      <source>Keep the whole reference well inside the photo.</source>
      <translation>Die ganze Referenz deutlich innerhalb des Fotos halten.</translation>
    </message>
    <message>
      <source>Kept</source>
      <translation>Geblieben</translation>
    </message>
    <message>
      <source>LP, cumulative on the frame, for the level and wall</source>
      <translation>LP, Summe auf dem Rahmen, für Stufe und Wanddicke</translation>
    </message>
    <message>
      <source>LP, single, for the level and wall</source>
      <translation>LP, einzeln, für Stufe und Wanddicke</translation>
    </message>
    <message>
      <source>Laid over each other by {0}</source>
      <translation>Übereinandergelegt nach {0}</translation>
    </message>
    <message>
      <source>Lay it beside the weld, or give how far it lies above the surface; where the weld is flat, give 0 as the height of the indications.</source>
      <translation>Ihn neben die Naht legen oder angeben, wie weit er über der Fläche liegt; wo die Naht flach ist, 0 als Höhe der Anzeigen angeben.</translation>
    </message>
    <message>
      <source>Lay the reference beside the indications.</source>
      <translation>Die Referenz neben die Anzeigen legen.</translation>
    </message>
    <message>
      <source>Length end to end, or area of the hull around all</source>
      <translation>Länge von Ende zu Ende oder Fläche der Hülle um alle</translation>
    </message>
    <message>
      <source>Length of the stretch</source>
      <translation>Länge des Abschnitts</translation>
    </message>
    <message>
      <source>Length over width</source>
      <translation>Länge durch Breite</translation>
    </message>
    <message>
      <source>Length, mm</source>
      <translation>Länge, mm</translation>
    </message>
    <message>
      <source>Lengths known to ± {0} in place of ± {1} would pass it.</source>
      <translation>Auf ± {0} statt ± {1} bekannte Längen würden sie bestehen lassen.</translation>
    </message>
    <message>
      <source>Let hot parts cool into the procedure's temperature range before penetrant or remover touches them.</source>
      <translation>Heiße Teile in den Temperaturbereich der Verfahrensanweisung abkühlen lassen, bevor Eindringmittel oder Zwischenreiniger sie berührt.</translation>
    </message>
    <message>
      <source>Light meter</source>
      <translation>Luxmeter</translation>
    </message>
    <message>
      <source>Light the surface better (the procedure asks for it too), or expose longer.</source>
      <translation>Die Oberfläche besser beleuchten (auch die Verfahrensanweisung verlangt es) oder länger belichten.</translation>
    </message>
    <message>
      <source>Linear is what is {0}; all else is rounded.</source>
      <translation>Linienartig ist, was {0} ist; alles andere ist nicht linienartig.</translation>
    </message>
    <message>
      <source>Linear or rounded</source>
      <translation>Linienartig oder nicht linienartig</translation>
    </message>
    <message>
      <source>Linear or rounded is not sure for {0}: judged as the stricter.</source>
      <translation>Linienartig oder nicht linienartig ist nicht sicher bei {0}: als das Strengere bewertet.</translation>
    </message>
    <message>
      <source>Look again, drop what was not to be examined, or make the area larger.</source>
      <translation>Neu suchen, verwerfen, was nicht zu prüfen war, oder den Bereich vergrößern.</translation>
    </message>
    <message>
      <source>Look at each of them, or take the photo again in white light and without a filter.</source>
      <translation>Jede davon ansehen, oder das Foto in weißem Licht und ohne Filter noch einmal aufnehmen.</translation>
    </message>
    <message>
      <source>Look at the part, and trace the crack alone if the rest is none.</source>
      <translation>Das Teil ansehen und den Riss allein nachzeichnen, wenn der Rest keiner ist.</translation>
    </message>
    <message>
      <source>Lower the exposure until the developer is light grey, and use no scanning program or filter that makes white pure.</source>
      <translation>Die Belichtung verringern, bis der Entwickler hellgrau ist, und kein Scanprogramm und keinen Filter nehmen, der Weiß rein macht.</translation>
    </message>
    <message>
      <source>Lower the exposure, or set the white balance to the light in use.</source>
      <translation>Die Belichtung verringern oder den Weißabgleich auf das vorhandene Licht einstellen.</translation>
    </message>
    <message>
      <source>Many penetrants, removers and developers are flammable, as liquid and as spray mist: keep them from sparks, flames, welding, grinding and hot or energised parts, keep the amounts small and put used cloths into a closed metal container.</source>
      <translation>Viele Eindringmittel, Zwischenreiniger und Entwickler sind entzündbar, flüssig wie als Sprühnebel: von Funken, Flammen, Schweißen, Schleifen und heißen oder spannungführenden Teilen fernhalten, kleine Mengen verwenden und gebrauchte Tücher in einen geschlossenen Metallbehälter geben.</translation>
    </message>
    <message>
      <source>Mark a smaller examined area, or clean the part again and repeat the test.</source>
      <translation>Einen kleineren Prüfbereich markieren, oder das Teil noch einmal reinigen und die Prüfung wiederholen.</translation>
    </message>
    <message>
      <source>Mark out a smaller area where the colour is even and look again, or trace the indication by hand.</source>
      <translation>Einen kleineren Bereich mit gleichmäßiger Farbe markieren und neu suchen oder die Anzeige von Hand zeichnen.</translation>
    </message>
    <message>
      <source>May be met: {0}.</source>
      <translation>Möglicherweise erfüllt: {0}.</translation>
    </message>
    <message>
      <source>Measure both at the surface and write them into the record, let the eyes adapt to the dark, and keep unfiltered or damaged UV lamps away from eyes and skin.</source>
      <translation>Beides an der Oberfläche messen und ins Protokoll schreiben, die Augen an die Dunkelheit anpassen lassen und ungefilterte oder beschädigte UV-Lampen von Augen und Haut fernhalten.</translation>
    </message>
    <message>
      <source>Measured points only; the lines join them and say nothing of the time between.</source>
      <translation>Nur gemessene Punkte; die Linien verbinden sie und sagen nichts über die Zeit dazwischen.</translation>
    </message>
    <message>
      <source>Met: {0}.</source>
      <translation>Erfüllt: {0}.</translation>
    </message>
    <message>
      <source>Minutes from when the developer was dry ({0}) to each photo, both by the camera's clock.</source>
      <translation>Minuten von dem Zeitpunkt, als der Entwickler trocken war ({0}), bis zu jedem Foto, beides nach der Uhr der Kamera.</translation>
    </message>
    <message>
      <source>Most of the examined area is overexposed, and pale indications on it are lost. Take another photo with a lower exposure.</source>
      <translation>Der größte Teil des Prüfbereichs ist überbelichtet, und blasse Anzeigen darauf sind verloren. Ein weiteres Foto mit geringerer Belichtung aufnehmen.</translation>
    </message>
    <message>
      <source>Mostly pale, with a part that holds twice the dye and more: {0}. A crack that touches the rim of a run or a stain is called as one with it.</source>
      <translation>Überwiegend blass, mit einem Stück von doppelt so viel Farbstoff und mehr: {0}. Ein Riss, der den Rand eines Läufers oder Flecks berührt, wird als eins mit ihm gemeldet.</translation>
    </message>
    <message>
      <source>Moved during the exposure: edges that face one way are {0} times as soft as the others, and a thin line across the motion looks wider than it is, so that a linear indication may be taken for a rounded one.</source>
      <translation>Während der Belichtung bewegt: Kanten in einer Richtung sind {0}-mal so weich wie die anderen, und eine dünne Linie quer zur Bewegung sieht breiter aus, als sie ist, sodass eine linienartige Anzeige für eine rundliche gehalten werden kann.</translation>
    </message>
    <message>
      <source>Name of the line as the scene gives it in edges_mm</source>
      <translation>Name der Linie, wie ihn edges_mm der Szene nennt</translation>
    </message>
    <message>
      <source>Named kind, any size</source>
      <translation>Benannte Art, jede Größe</translation>
    </message>
    <message>
      <source>Names or numbers of ISO 6520-1</source>
      <translation>Namen oder Nummern der ISO 6520-1</translation>
    </message>
    <message>
      <source>Neighbours as one</source>
      <translation>Nachbarn als eine</translation>
    </message>
    <message>
      <source>Neighbours count as one where the gap is small against the smaller one's length</source>
      <translation>Nachbarn zählen als eine, wo der Abstand klein ist gegen die Länge der kleineren</translation>
    </message>
    <message>
      <source>New</source>
      <translation>Neu</translation>
    </message>
    <message>
      <source>New: {0}.</source>
      <translation>Neu: {0}.</translation>
    </message>
    <message>
      <source>No acceptance criteria are chosen: there is no verdict.</source>
      <translation>Keine Zulässigkeitskriterien gewählt: Es gibt keine Bewertung.</translation>
    </message>
    <message>
      <source>No indication is named {0} (ISO 6520-1 {1}).</source>
      <translation>Keine Anzeige ist als {0} benannt (ISO 6520-1 {1}).</translation>
    </message>
    <message>
      <source>No indication meets {0}.</source>
      <translation>Keine Anzeige erfüllt {0}.</translation>
    </message>
    <message>
      <source>No photo to evaluate: {0}</source>
      <translation>Kein Foto auszuwerten: {0}</translation>
    </message>
    <message>
      <source>No rule of these criteria limits the length of a single {0} indication, such as {1}.</source>
      <translation>Keine Regel dieser Kriterien begrenzt die Länge einer einzelnen Anzeige ({0}), etwa von {1}.</translation>
    </message>
    <message>
      <source>No scale is set: nothing is measured and no verdict can be given.</source>
      <translation>Kein Maßstab gesetzt: Nichts ist gemessen, und eine Bewertung ist nicht möglich.</translation>
    </message>
    <message>
      <source>Not compared: {0}.</source>
      <translation>Nicht verglichen: {0}.</translation>
    </message>
    <message>
      <source>Not laid over the photo before, so compare by eye: {0}.</source>
      <translation>Nicht über das Foto davor gelegt, also mit dem Auge vergleichen: {0}.</translation>
    </message>
    <message>
      <source>Not measured: {0}. The surface turns away too far there; take another photo from that side.</source>
      <translation>Nicht gemessen: {0}. Die Oberfläche wendet sich dort zu weit ab; ein weiteres Foto von dieser Seite aufnehmen.</translation>
    </message>
    <message>
      <source>Not met: {0}.</source>
      <translation>Nicht erfüllt: {0}.</translation>
    </message>
    <message>
      <source>Not yet looked at by a person: {0}. The verdict counts them; take or drop each.</source>
      <translation>Noch von niemandem angesehen: {0}. Die Bewertung zählt sie mit; jede übernehmen oder verwerfen.</translation>
    </message>
    <message>
      <source>Note: {0}.</source>
      <translation>Anmerkung: {0}.</translation>
    </message>
    <message>
      <source>Number or summed length in any stretch of weld of a given length</source>
      <translation>Anzahl oder Längensumme in jedem Nahtabschnitt gegebener Länge</translation>
    </message>
    <message>
      <source>Number or summed length on a frame of fixed sides at its worst place and turn</source>
      <translation>Anzahl oder Längensumme auf einem Rahmen fester Seiten in der ungünstigsten Lage und Drehung</translation>
    </message>
    <message>
      <source>Of one width with blunt ends, like a pen stroke or a thread: {0}. Red ink has the colour of dye: look at the part, and drop what is none.</source>
      <translation>Gleich breit mit stumpfen Enden, wie ein Stiftstrich oder ein Faden: {0}. Rote Tinte hat die Farbe des Farbstoffs: das Teil ansehen und verwerfen, was keine Anzeige ist.</translation>
    </message>
    <message>
      <source>Of one width with blunt ends, like a thread or a highlighter's stroke: {0}. Lint, paper and highlighter ink glow under UV-A as penetrant does: look at the part, and drop what is none.</source>
      <translation>Gleich breit mit stumpfen Enden, wie ein Faden oder ein Textmarkerstrich: {0}. Fusseln, Papier und Textmarkertinte leuchten unter UV-A wie Eindringmittel: das Teil ansehen und verwerfen, was keine Anzeige ist.</translation>
    </message>
    <message>
      <source>On a reference area</source>
      <translation>Auf einer Bezugsfläche</translation>
    </message>
    <message>
      <source>On overexposed developer: {0}. Its sizes are the least that they can be; take another photo with a lower exposure.</source>
      <translation>Auf überbelichtetem Entwickler: {0}. Die Maße sind die kleinsten, die sie sein können; ein weiteres Foto mit geringerer Belichtung aufnehmen.</translation>
    </message>
    <message>
      <source>One public page states 10 mm as the limit of one diameter; it is the limit of a sum.</source>
      <translation>Eine öffentliche Seite nennt 10 mm als Grenze eines Durchmessers; es ist die Grenze einer Summe.</translation>
    </message>
    <message>
      <source>One secondary source gives 1.5, 3 and 6 mm (linear) and 3, 4 and 8 mm (non-linear) for levels 1, 2 and 3 in place of 2, 4, 8 and 4, 6, 8 mm.</source>
      <translation>Eine Quelle aus zweiter Hand nennt 1,5, 3 und 6 mm (linienartig) und 3, 4 und 8 mm (nicht linienartig) für die Grenzen 1, 2 und 3 statt 2, 4, 8 und 4, 6, 8 mm.</translation>
    </message>
    <message>
      <source>Only those count whose length is</source>
      <translation>Gezählt werden nur, deren Länge ist</translation>
    </message>
    <message>
      <source>Only those the inspector has named so (ISO 6520-1)</source>
      <translation>Nur die, die der Prüfer so benannt hat (ISO 6520-1)</translation>
    </message>
    <message>
      <source>Only where such a row is, end to end</source>
      <translation>Nur wo eine solche Reihe von Ende zu Ende ist</translation>
    </message>
    <message>
      <source>Open it again</source>
      <translation>Noch einmal öffnen</translation>
    </message>
    <message>
      <source>Open the photo that it should lead to</source>
      <translation>Das Foto öffnen, zu dem sie führen soll</translation>
    </message>
    <message>
      <source>Or this share of the thickness, if that is less</source>
      <translation>Oder dieser Anteil der Dicke, falls das weniger ist</translation>
    </message>
    <message>
      <source>Other rules of which one must be hit, where none of the exemptions holds</source>
      <translation>Andere Regeln, von denen eine treffen muss, wo keine der Ausnahmen gilt</translation>
    </message>
    <message>
      <source>Other rules of which one must be hit; they no longer judge by themselves</source>
      <translation>Andere Regeln, von denen eine treffen muss; sie bewerten dann nicht mehr allein</translation>
    </message>
    <message>
      <source>Other rules that must all be hit; they no longer judge by themselves</source>
      <translation>Andere Regeln, die alle treffen müssen; sie bewerten dann nicht mehr allein</translation>
    </message>
    <message>
      <source>Out of focus or moved: edges are {0} mm wide, where sizes from {1} mm count.</source>
      <translation>Unscharf oder verwackelt: Kanten sind {0} mm breit, wo Größen ab {1} mm zählen.</translation>
    </message>
    <message>
      <source>Out of focus or moved: edges are {0} pixels wide.</source>
      <translation>Unscharf oder verwackelt: Kanten sind {0} Pixel breit.</translation>
    </message>
    <message>
      <source>Outside the examined area, and judged all the same: {0}.</source>
      <translation>Außerhalb des Prüfbereichs und doch bewertet: {0}.</translation>
    </message>
    <message>
      <source>Overexposed: {0} % of the examined area is clipped, and pale indications on it are lost.</source>
      <translation>Überbelichtet: {0} % des Prüfbereichs sind ausgebrannt, und blasse Anzeigen darauf sind verloren.</translation>
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
      <source>Penetrant inspection by a class table on the drawing: one class</source>
      <translation>Eindringprüfung nach einer Klassentabelle der Zeichnung: eine Klasse</translation>
    </message>
    <message>
      <source>Penetrant on</source>
      <translation>Eindringmittel auf</translation>
    </message>
    <message>
      <source>Photo {0} ({1!s}) cannot be judged</source>
      <translation>Foto {0} ({1!s}) kann nicht bewertet werden</translation>
    </message>
    <message>
      <source>Photo {0}: {1}</source>
      <translation>Foto {0}: {1}</translation>
    </message>
    <message>
      <source>Places with haze or glow as dense as an indication, with pink in a crease, of uneven colour, or as dense in much grain, which may hide one or be one: {0}.</source>
      <translation>Stellen mit Schleier oder Leuchten so dicht wie eine Anzeige, mit Rosa in einer Falte, von ungleichmäßiger Farbe oder so dicht in viel Rauschen, die eine verdecken oder sein können: {0}.</translation>
    </message>
    <message>
      <source>Places with haze or glow as dense as an indication, with pink in a crease, of uneven colour, or as dense in much grain, which may hide one or be one: {0}. Clean the part again and repeat the test; where it is grain, take the photo again in more light.</source>
      <translation>Stellen mit Schleier oder Leuchten so dicht wie eine Anzeige, mit Rosa in einer Falte, von ungleichmäßiger Farbe oder so dicht in viel Rauschen, die eine verdecken oder sein können: {0}. Das Teil neu reinigen und die Prüfung wiederholen; wo es Rauschen ist, das Foto bei mehr Licht neu aufnehmen.</translation>
    </message>
    <message>
      <source>Qualify the procedure by Appendix III.</source>
      <translation>Das Verfahren nach Appendix III qualifizieren.</translation>
    </message>
    <message>
      <source>Reddish places left out for their dull colour alone: {0}. In a photo of dull colours or in poor light, indications look like that.</source>
      <translation>Rötliche Stellen, die nur wegen matter Farbe ausgelassen sind: {0}. In einem Foto matter Farben oder in schlechtem Licht sehen Anzeigen so aus.</translation>
    </message>
    <message>
      <source>Relevant</source>
      <translation>Relevanz</translation>
    </message>
    <message>
      <source>Relevant where the length is</source>
      <translation>Relevant, wo die Länge ist</translation>
    </message>
    <message>
      <source>Removal begun</source>
      <translation>Zwischenreinigung begonnen</translation>
    </message>
    <message>
      <source>Remover batch</source>
      <translation>Charge des Zwischenreinigers</translation>
    </message>
    <message>
      <source>Rest the camera on something, keep the part still, give more light so that the exposure is shorter, and take the photo again.</source>
      <translation>Die Kamera auflegen, das Teil ruhig halten, für mehr Licht sorgen, damit die Belichtung kürzer wird, und das Foto noch einmal aufnehmen.</translation>
    </message>
    <message>
      <source>Reviewer's certificate</source>
      <translation>Zertifikat des Gegenprüfers</translation>
    </message>
    <message>
      <source>SP, largest length for the level</source>
      <translation>SP, größte Länge für die Stufe</translation>
    </message>
    <message>
      <source>Save it as 8- or 16-bit RGB or grey TIFF, or as PNG</source>
      <translation>Als TIFF in RGB oder Grau mit 8 oder 16 Bit oder als PNG speichern</translation>
    </message>
    <message>
      <source>Save it as 8-bit JPEG</source>
      <translation>Als JPEG mit 8 Bit speichern</translation>
    </message>
    <message>
      <source>Save it as 8-bit RGB or grey</source>
      <translation>In RGB oder Grau mit 8 Bit speichern</translation>
    </message>
    <message>
      <source>Save the photo in a smaller form</source>
      <translation>Das Foto in kleinerer Form speichern</translation>
    </message>
    <message>
      <source>Scale or rule</source>
      <translation>Maßstab oder Lineal</translation>
    </message>
    <message>
      <source>Set aside without a reason: {0}. Give the reason.</source>
      <translation>Ohne Grund ausgenommen: {0}. Den Grund angeben.</translation>
    </message>
    <message>
      <source>Several photos: compare them by eye.</source>
      <translation>Mehrere Fotos: mit dem Auge vergleichen.</translation>
    </message>
    <message>
      <source>Shape, any size</source>
      <translation>Form, jede Größe</translation>
    </message>
    <message>
      <source>Share of the weld</source>
      <translation>Anteil an der Naht</translation>
    </message>
    <message>
      <source>Short name of the rule, each one once</source>
      <translation>Kurzer Name der Regel, jeder nur einmal</translation>
    </message>
    <message>
      <source>Size</source>
      <translation>Größe</translation>
    </message>
    <message>
      <source>So many in a rectangle of any shape and turn, limited in area and side</source>
      <translation>So viele in einem Rechteck beliebiger Form und Drehung, begrenzt in Fläche und Seite</translation>
    </message>
    <message>
      <source>So many that hang together by small gaps, by the length or area they take up</source>
      <translation>So viele, die mit kleinen Abständen zusammenhängen, nach der Länge oder Fläche, die sie einnehmen</translation>
    </message>
    <message>
      <source>So many that one straight line crosses, with small gaps edge to edge</source>
      <translation>So viele, die eine gerade Linie schneidet, mit kleinen Abständen von Rand zu Rand</translation>
    </message>
    <message>
      <source>Some of the examined area lay outside what was looked over, so that nothing marked there tells nothing. Look again.</source>
      <translation>Ein Teil des Prüfbereichs lag außerhalb des Durchgesehenen; dass dort nichts markiert ist, besagt nichts. Neu suchen.</translation>
    </message>
    <message>
      <source>Stands in haze, rust, grain, a red reflection, beside paint or where the file lost its colour, so that its ends may not show: {0}. Its sizes are the least that they can be; clean and test the part again, go closer, or trace it by hand where you see that it ends.</source>
      <translation>Steht in Schleier, Rost, Rauschen, einem roten Widerschein, neben Lack oder wo die Datei ihre Farbe verloren hat, sodass ihre Enden vielleicht nicht zu sehen sind: {0}. Die Maße sind die kleinsten, die sie sein können; das Teil reinigen und noch einmal prüfen, näher herangehen, oder von Hand nachzeichnen, wo Sie sehen, dass sie endet.</translation>
    </message>
    <message>
      <source>Summed lengths as a share of the weld's length</source>
      <translation>Längensumme als Anteil an der Nahtlänge</translation>
    </message>
    <message>
      <source>Surface temperature</source>
      <translation>Temperatur der Oberfläche</translation>
    </message>
    <message>
      <source>Table 1, recording level</source>
      <translation>Table 1, Registriergrenze</translation>
    </message>
    <message>
      <source>Table 1, suffix X</source>
      <translation>Table 1, Zusatz X</translation>
    </message>
    <message>
      <source>Table 8.1 (8B), exception</source>
      <translation>Table 8.1 (8B), Ausnahme</translation>
    </message>
    <message>
      <source>Take it without HDR, or save it as an ordinary photo</source>
      <translation>Ohne HDR aufnehmen oder als gewöhnliches Foto speichern</translation>
    </message>
    <message>
      <source>Take the photo again with fewer pixels, or cut out the examined area</source>
      <translation>Das Foto mit weniger Pixeln aufnehmen oder den Prüfbereich ausschneiden</translation>
    </message>
    <message>
      <source>Take the photo in colour, without a filter.</source>
      <translation>Das Foto in Farbe aufnehmen, ohne Filter.</translation>
    </message>
    <message>
      <source>Take the photo in white light, with the white balance set to it.</source>
      <translation>Das Foto in weißem Licht aufnehmen, mit dem Weißabgleich darauf.</translation>
    </message>
    <message>
      <source>That the card was not moved is the user's word; the photos cannot show it.</source>
      <translation>Dass die Karte nicht bewegt wurde, ist das Wort des Benutzers; die Fotos können es nicht zeigen.</translation>
    </message>
    <message>
      <source>The area of clustered indications is not judged here.</source>
      <translation>Die Fläche von Anzeigengruppen wird hier nicht bewertet.</translation>
    </message>
    <message>
      <source>The background glows ({0} % of the brightest indication): faint indications are less sure.</source>
      <translation>Der Untergrund leuchtet ({0} % der hellsten Anzeige): Schwache Anzeigen sind weniger sicher.</translation>
    </message>
    <message>
      <source>The background glows much ({0} % of the brightest indication): it can hide faint indications.</source>
      <translation>Der Untergrund leuchtet stark ({0} % der hellsten Anzeige): Das kann schwache Anzeigen verdecken.</translation>
    </message>
    <message>
      <source>The card did not move between the photos (within {0} mm).</source>
      <translation>Die Karte wurde zwischen den Fotos nicht bewegt (auf {0} mm).</translation>
    </message>
    <message>
      <source>The card moved by about {0} mm on the surface between the photos, so its frame is not common to them: they are registered by the surface itself.</source>
      <translation>Die Karte wurde zwischen den Fotos um etwa {0} mm auf der Oberfläche bewegt, ihr Bezug ist ihnen also nicht gemeinsam: Sie werden nach der Oberfläche selbst zur Deckung gebracht.</translation>
    </message>
    <message>
      <source>The date can be read two ways. Write it year-month-day.</source>
      <translation>Das Datum kann auf zwei Arten gelesen werden. Jahr-Monat-Tag schreiben.</translation>
    </message>
    <message>
      <source>The disposition departs from the verdict and gives no reason.</source>
      <translation>Der Entscheid weicht von der Bewertung ab und nennt keinen Grund.</translation>
    </message>
    <message>
      <source>The distance to the line '{0!s}' is asked for: mark that line, or give it in edges_mm.</source>
      <translation>Gefragt ist der Abstand zur Linie „{0!s}“: diese Linie markieren oder in edges_mm angeben.</translation>
    </message>
    <message>
      <source>The edition named in the contract governs, not this file; the certified inspector decides.</source>
      <translation>Es gilt die Ausgabe, die der Vertrag nennt, nicht diese Datei; der zertifizierte Prüfer entscheidet.</translation>
    </message>
    <message>
      <source>The embedded colour profile could not be read and was left out.</source>
      <translation>Das eingebettete Farbprofil war nicht lesbar und blieb außer Acht.</translation>
    </message>
    <message>
      <source>The embedded colour profile does not fit the picture and was left out.</source>
      <translation>Das eingebettete Farbprofil passt nicht zum Bild und blieb außer Acht.</translation>
    </message>
    <message>
      <source>The examined area reaches {0} mm away from the scale reference, which is {1} mm large: the scale is less sure there.</source>
      <translation>Der Prüfbereich reicht bis {0} mm von der Maßstabsreferenz weg, die {1} mm groß ist: Der Maßstab ist dort weniger sicher.</translation>
    </message>
    <message>
      <source>The examiner's near and colour vision, and the light at the surface, must be qualified as the procedure asks.</source>
      <translation>Das Nah- und Farbsehen des Prüfers und das Licht an der Oberfläche müssen nachgewiesen sein, wie die Verfahrensanweisung es verlangt.</translation>
    </message>
    <message>
      <source>The file holds {0} frames or pages; the first is shown.</source>
      <translation>Die Datei enthält {0} Bilder oder Seiten; gezeigt wird die erste.</translation>
    </message>
    <message>
      <source>The file is compressed so strongly that thin and pale indications lose their colour in it and are not called, and edges shift. Use the photo as the camera wrote it, not a copy that was sent or saved smaller.</source>
      <translation>Die Datei ist so stark komprimiert, dass dünne und blasse Anzeigen darin ihre Farbe verlieren und nicht gefunden werden und Kanten sich verschieben. Das Foto verwenden, wie die Kamera es geschrieben hat, keine Kopie, die verschickt oder kleiner gespeichert wurde.</translation>
    </message>
    <message>
      <source>The file is compressed strongly ({0}): thin and pale indications lose their colour and may be missed.</source>
      <translation>Die Datei ist stark komprimiert ({0}): Dünne und blasse Anzeigen verlieren ihre Farbe und können übersehen werden.</translation>
    </message>
    <message>
      <source>The file is transparent in some {0} % of the examined area: that is shown white, as clean developer is, and nothing beneath it is seen.</source>
      <translation>Die Datei ist in etwa {0} % des Prüfbereichs durchsichtig: Das erscheint weiß wie sauberer Entwickler, und was darunter liegt, ist nicht zu sehen.</translation>
    </message>
    <message>
      <source>The length from which an indication is judged at all</source>
      <translation>Die Länge, ab der eine Anzeige überhaupt bewertet wird</translation>
    </message>
    <message>
      <source>The length of each indication</source>
      <translation>Die Länge jeder Anzeige</translation>
    </message>
    <message>
      <source>The limit depends on the thickness of the part: give thickness_mm.</source>
      <translation>Die Grenze hängt von der Dicke des Teils ab: thickness_mm angeben.</translation>
    </message>
    <message>
      <source>The limit depends on the {0} of the part: give {1}_mm.</source>
      <translation>Die Grenze hängt von einem Maß des Teils ab ({0}): {1}_mm angeben.</translation>
    </message>
    <message>
      <source>The limit is a share of the weld's length: give weld_length_mm.</source>
      <translation>Die Grenze ist ein Anteil der Nahtlänge: weld_length_mm angeben.</translation>
    </message>
    <message>
      <source>The limits of “{0}”, which the record names, are not known here: held against {1}.</source>
      <translation>Die Grenzen von „{0}“, die das Protokoll nennt, sind hier nicht bekannt: gemessen an {1}.</translation>
    </message>
    <message>
      <source>The name says {0}, the content is {1}.</source>
      <translation>Der Name sagt {0}, der Inhalt ist {1}.</translation>
    </message>
    <message>
      <source>The pairs of this edition are not conversions of each other: 2 mm stands beside 1/16 in.</source>
      <translation>Die Paare dieser Ausgabe sind keine Umrechnungen voneinander: 2 mm steht neben 1/16 in.</translation>
    </message>
    <message>
      <source>The photo does not tell whether the penetrant is fluorescent or of colour contrast, and looked at for the wrong one, indications are not called.</source>
      <translation>Das Foto zeigt nicht, ob das Eindringmittel fluoresziert oder mit Farbkontrast arbeitet; nach dem falschen gesucht, werden Anzeigen nicht gefunden.</translation>
    </message>
    <message>
      <source>The photo does not tell whether the penetrant is fluorescent or of colour contrast: nothing in it is white in white light, or something glows in it beside what is white. Looked at for the wrong one, indications are not called. Choose the kind of penetrant and look again.</source>
      <translation>Das Foto zeigt nicht, ob das Eindringmittel fluoresziert oder mit Farbkontrast arbeitet: Nichts darin ist weiß in weißem Licht, oder etwas leuchtet darin neben Weißem. Nach dem falschen gesucht, werden Anzeigen nicht gefunden. Die Art des Eindringmittels wählen und erneut suchen.</translation>
    </message>
    <message>
      <source>The photo holds no colour, so nothing in it can be told to be dye.</source>
      <translation>Das Foto enthält keine Farbe, daher ist nichts darin als Farbstoff zu erkennen.</translation>
    </message>
    <message>
      <source>The photo holds no colour, so that nothing is marked in it tells nothing. Take it in colour, or trace what is there by hand.</source>
      <translation>Das Foto enthält keine Farbe; dass nichts darin markiert ist, besagt daher nichts. Es in Farbe aufnehmen oder von Hand nachziehen, was da ist.</translation>
    </message>
    <message>
      <source>The photo may not show all of it, so at least: {0}.</source>
      <translation>Das Foto zeigt vielleicht nicht alles davon, also mindestens: {0}.</translation>
    </message>
    <message>
      <source>The photo shows no grain: it was smoothed, by noise reduction, a filter or strong compression, and thin ends and faint indications go with the grain, so that lengths may come out too short by more than their U.</source>
      <translation>Das Foto zeigt kein Korn: Es wurde geglättet, durch Rauschminderung, einen Filter oder starke Kompression, und mit dem Korn gehen dünne Enden und schwache Anzeigen verloren, sodass Längen um mehr als ihr U zu kurz sein können.</translation>
    </message>
    <message>
      <source>The photo was not looked over, so that nothing is marked in it tells nothing. Look for indications, or trace what is there by hand.</source>
      <translation>Das Foto wurde nicht abgesucht; dass nichts darin markiert ist, besagt darum nichts. Nach Anzeigen suchen oder von Hand nachzeichnen, was da ist.</translation>
    </message>
    <message>
      <source>The photo was sharpened strongly: a rim beside the card's black is {0} % brighter than its white. Thin ends and faint indications that were smoothed away before do not come back, so that lengths may come out too short by more than their U.</source>
      <translation>Das Foto wurde stark geschärft: ein Rand neben dem Schwarz der Karte ist {0} % heller als ihr Weiß. Dünne Enden und schwache Anzeigen, die davor weggeglättet wurden, kommen nicht wieder, sodass Längen um mehr als ihr U zu kurz ausfallen können.</translation>
    </message>
    <message>
      <source>The photo was smoothed or enlarged, or sharpened so strongly that it may have been smoothed: thin ends and faint indications go so, and lengths are the least that they can be. Take another photo with beauty and noise filters off, and use it as the camera wrote it.</source>
      <translation>Das Foto wurde geglättet oder vergrößert, oder so stark geschärft, dass es davor geglättet worden sein kann: dünne Enden und schwache Anzeigen gehen dabei verloren, und Längen sind das Mindeste, was sie sein können. Ein weiteres Foto ohne Verschönerungs- und Rauschfilter aufnehmen und so verwenden, wie die Kamera es geschrieben hat.</translation>
    </message>
    <message>
      <source>The photo was smoothed or enlarged: corners of the card's squares are rounded by {0} pixels more than its blur makes them. Thin ends and faint indications go so too, so that lengths may come out too short by more than their U.</source>
      <translation>Das Foto wurde geglättet oder vergrößert: die Ecken der Quadrate der Karte sind um {0} Pixel mehr gerundet, als seine Unschärfe sie macht. Dünne Enden und schwache Anzeigen gehen ebenso verloren, sodass Längen um mehr als ihr U zu kurz ausfallen können.</translation>
    </message>
    <message>
      <source>The red is clipped: how much dye there is can no longer be told, and edges shift.</source>
      <translation>Das Rot ist übersteuert: Wie viel Farbe da ist, lässt sich nicht mehr sagen, und Kanten verschieben sich.</translation>
    </message>
    <message>
      <source>The reference area of 148 by 105 mm is laid at its worst place and turn, and an indication that only reaches into it counts whole.</source>
      <translation>Die Bezugsfläche von 148 × 105 mm wird in die ungünstigste Lage und Drehung gelegt; eine Anzeige, die nur hineinreicht, zählt ganz.</translation>
    </message>
    <message>
      <source>The run of the weld is that of the two indications farthest apart unless weld_direction_deg is given.</source>
      <translation>Als Verlauf der Naht gilt die Richtung der beiden am weitesten entfernten Anzeigen, wenn weld_direction_deg nicht angegeben ist.</translation>
    </message>
    <message>
      <source>The run of the weld was taken from the two indications farthest apart; give weld_direction_deg where that is not so.</source>
      <translation>Der Verlauf der Naht ist nach den beiden am weitesten entfernten Anzeigen angenommen; weld_direction_deg angeben, wo das nicht stimmt.</translation>
    </message>
    <message>
      <source>The scale card is cut off by the photo's border.</source>
      <translation>Die Maßstabskarte ist vom Rand des Fotos abgeschnitten.</translation>
    </message>
    <message>
      <source>The scale reference lies at the photo's border, where the lens bends most.</source>
      <translation>Die Maßstabsreferenz liegt am Rand des Fotos, wo das Objektiv am meisten verzeichnet.</translation>
    </message>
    <message>
      <source>The scale reference lies on the weld: where the crown lifts it off the surface, lengths beside it come out too short, 0.5 % for each mm at 200 mm.</source>
      <translation>Der Maßstab liegt auf der Naht: Wo die Nahtüberhöhung ihn von der Fläche abhebt, werden Längen daneben zu kurz, je mm um 0,5 % bei 200 mm Abstand.</translation>
    </message>
    <message>
      <source>The search for the worst place was cut short, so it is left open.</source>
      <translation>Die Suche nach der ungünstigsten Stelle wurde abgebrochen, es bleibt also offen.</translation>
    </message>
    <message>
      <source>The size of the indication is judged, not that of the imperfection beneath it (8-3).</source>
      <translation>Bewertet wird die Größe der Anzeige, nicht die der Unregelmäßigkeit darunter (8-3).</translation>
    </message>
    <message>
      <source>The standard's own grouping of aligned indications is not applied here: its figures were not to hand.</source>
      <translation>Die eigene Gruppierung der Norm für aufgereihte Anzeigen wird hier nicht angewandt: Ihre Werte lagen nicht vor.</translation>
    </message>
    <message>
      <source>The table of limits has no band for a {0} of {1}.</source>
      <translation>Die Tabelle der Grenzen hat keine Stufe für {0} {1}.</translation>
    </message>
    <message>
      <source>The tested zone is the weld with 10 mm of parent metal on each side (memory); mark it as the examined area.</source>
      <translation>Geprüft wird die Naht mit 10 mm Grundwerkstoff auf jeder Seite (aus dem Gedächtnis); als Prüfbereich markieren.</translation>
    </message>
    <message>
      <source>The time to evaluate is shaded; the procedure's own governs.</source>
      <translation>Die Zeit zum Auswerten ist schattiert; es gilt die der Prüfanweisung.</translation>
    </message>
    <message>
      <source>The two sides of the frame</source>
      <translation>Die beiden Seiten des Rahmens</translation>
    </message>
    <message>
      <source>The verdict is an aid. The contract's own edition of the code, local rules and the certified inspector decide.</source>
      <translation>Die Bewertung ist eine Hilfe. Es entscheiden die Ausgabe des Regelwerks, die der Vertrag nennt, örtliche Vorschriften und der zertifizierte Prüfer.</translation>
    </message>
    <message>
      <source>The {0} longest are drawn.</source>
      <translation>Die {0} längsten sind gezeichnet.</translation>
    </message>
    <message>
      <source>The {0} of the part is asked for: give {1}_mm.</source>
      <translation>Gefragt ist ein Maß des Teils ({0}): {1}_mm angeben.</translation>
    </message>
    <message>
      <source>The {0} of {1} is not {2}.</source>
      <translation>{0} {1}: nicht {2}.</translation>
    </message>
    <message>
      <source>The {0} of {1} is {2}.</source>
      <translation>{0} {1}: {2}.</translation>
    </message>
    <message>
      <source>There are no indications.</source>
      <translation>Es gibt keine Anzeigen.</translation>
    </message>
    <message>
      <source>There is much {0}: it can hide faint indications.</source>
      <translation>Viel {0}: Er kann schwache Anzeigen verdecken.</translation>
    </message>
    <message>
      <source>There is no relevant indication that this rule looks at.</source>
      <translation>Es gibt keine relevante Anzeige, die diese Regel betrachtet.</translation>
    </message>
    <message>
      <source>There is {0}: faint indications are less sure.</source>
      <translation>Es gibt {0}: Schwache Anzeigen sind weniger sicher.</translation>
    </message>
    <message>
      <source>There is {0}; {1}.</source>
      <translation>{0}; {1}.</translation>
    </message>
    <message>
      <source>There is {0}{1}</source>
      <translation>{0}{1}</translation>
    </message>
    <message>
      <source>These are visual limits for pores; on a penetrant photo the bleed-out is judged, which is larger.</source>
      <translation>Dies sind Grenzen der Sichtprüfung für Poren; auf einem Eindringfoto wird die Ausblutung bewertet, die größer ist.</translation>
    </message>
    <message>
      <source>Thickness or diameter of the part</source>
      <translation>Dicke oder Durchmesser des Teils</translation>
    </message>
    <message>
      <source>This batch expired on {0}, before the examination ({1}).</source>
      <translation>Diese Charge lief ab am {0}, vor der Prüfung ({1}).</translation>
    </message>
    <message>
      <source>This certificate expired on {0}, before the examination ({1}).</source>
      <translation>Dieses Zertifikat ist abgelaufen am {0}, vor der Prüfung ({1}).</translation>
    </message>
    <message>
      <source>To evaluate: {0!s}, {1}</source>
      <translation>Auszuwerten: {0!s}, {1}</translation>
    </message>
    <message>
      <source>Too bright: the photo clips the light of {0} of {1} indications, and these read larger than they are, which their U holds.</source>
      <translation>Zu hell: das Licht von {0} von {1} Anzeigen ist im Foto ausgebrannt, und sie erscheinen größer, als sie sind, was ihr U enthält.</translation>
    </message>
    <message>
      <source>Too bright: {0} lx of other light, {1} lx at most for fluorescent penetrant ({2}).</source>
      <translation>Zu hell: {0} lx Fremdlicht, höchstens {1} lx bei fluoreszierendem Eindringmittel ({2}).</translation>
    </message>
    <message>
      <source>Too cold: {0} °C is below {1}.</source>
      <translation>Zu kalt: {0} °C liegt unter {1}.</translation>
    </message>
    <message>
      <source>Too dark: the developer shows {0} % of full light, and grain may hide faint indications.</source>
      <translation>Zu dunkel: Der Entwickler zeigt {0} % des vollen Lichts, und Rauschen kann schwache Anzeigen verdecken.</translation>
    </message>
    <message>
      <source>Too dark: {0} lx, at least {1} lx ({2}).</source>
      <translation>Zu dunkel: {0} lx, mindestens {1} lx ({2}).</translation>
    </message>
    <message>
      <source>Too far, or a photo that was reduced: 1.5 mm is less than 10 pixels in the farthest part of the examined area, where thin and faint indications are lost, or their ends. Go closer, or take several photos in its place; in place of a copy that was sent or scaled, use the photo as the camera wrote it. As an overview beside close-ups, give each indication the letter that it has in one of these.</source>
      <translation>Zu weit weg, oder ein verkleinertes Foto: 1,5 mm sind im fernsten Teil des Prüfbereichs weniger als 10 Pixel, wo schmale und schwache Anzeigen verloren gehen oder ihre Enden. Näher herangehen oder an seiner Stelle mehrere Fotos aufnehmen; statt einer gesendeten oder verkleinerten Kopie das Foto nehmen, wie die Kamera es geschrieben hat. Als Übersicht neben Nahaufnahmen jeder Anzeige den Buchstaben geben, den sie in einer von diesen hat.</translation>
    </message>
    <message>
      <source>Too far: {0} mm is only {1} pixels in the farthest part of the examined area, and what just counts may be missed or measured poorly.</source>
      <translation>Zu weit weg: {0} mm sind im fernsten Teil des Prüfbereichs nur {1} Pixel, und was gerade zählt, kann übersehen oder schlecht gemessen werden.</translation>
    </message>
    <message>
      <source>Too hot: {0} °C is above {1}.</source>
      <translation>Zu heiß: {0} °C liegt über {1}.</translation>
    </message>
    <message>
      <source>Too long where the length is</source>
      <translation>Zu lang, wo die Länge ist</translation>
    </message>
    <message>
      <source>Too many red places: {0} of them were not looked at closely, and indications among them are not called.</source>
      <translation>Zu viele rote Stellen: {0} davon wurden nicht genau angesehen, und Anzeigen darunter sind nicht gemeldet.</translation>
    </message>
    <message>
      <source>Too many red places: {0} of them were not looked at closely, and indications among them are not called. Mark a smaller examined area, or clean the part again and repeat the test.</source>
      <translation>Zu viele rote Stellen: {0} davon wurden nicht genau angesehen, und Anzeigen darunter sind nicht gemeldet. Einen kleineren Prüfbereich markieren, oder das Teil noch einmal reinigen und die Prüfung wiederholen.</translation>
    </message>
    <message>
      <source>Too much where that is</source>
      <translation>Zu viel, wo das ist</translation>
    </message>
    <message>
      <source>Too much where the share is</source>
      <translation>Zu viel, wo der Anteil ist</translation>
    </message>
    <message>
      <source>Too much where the sum is</source>
      <translation>Zu viel, wo die Summe ist</translation>
    </message>
    <message>
      <source>Too near where the distance is</source>
      <translation>Zu nahe, wo der Abstand ist</translation>
    </message>
    <message>
      <source>Too weak: {0} µW/cm², at least {1} µW/cm² ({2}).</source>
      <translation>Zu schwach: {0} µW/cm², mindestens {1} µW/cm² ({2}).</translation>
    </message>
    <message>
      <source>Transparent parts are shown over white.</source>
      <translation>Durchsichtige Teile werden über Weiß gezeigt.</translation>
    </message>
    <message>
      <source>Turn the light or the camera, or diffuse the light, and take the photo again.</source>
      <translation>Licht oder Kamera drehen oder das Licht streuen und das Foto noch einmal aufnehmen.</translation>
    </message>
    <message>
      <source>Two neighbours count as one where the gap is no larger than {0} of the smaller one.</source>
      <translation>Zwei Nachbarn zählen als eine, wo der Abstand nicht größer als {0} der kleineren ist.</translation>
    </message>
    <message>
      <source>Two neighbours count as one where the gap is smaller than {0} of the smaller one.</source>
      <translation>Zwei Nachbarn zählen als eine, wo der Abstand kleiner als {0} der kleineren ist.</translation>
    </message>
    <message>
      <source>Two or more pores in 12 in of weld are left open: clusters are judged by their extent and scattered pores by charts, neither of which is judged here.</source>
      <translation>Zwei oder mehr Poren auf 12 in Naht bleiben offen: Porennester werden nach ihrer Ausdehnung, verstreute Poren nach Vergleichsbildern bewertet, was beides hier nicht geschieht.</translation>
    </message>
    <message>
      <source>Two or more pores in 300 mm of weld are left open: clusters are judged by their extent and scattered pores by charts, neither of which is judged here.</source>
      <translation>Zwei oder mehr Poren auf 300 mm Naht bleiben offen: Porennester werden nach ihrer Ausdehnung, verstreute Poren nach Vergleichsbildern bewertet, was beides hier nicht geschieht.</translation>
    </message>
    <message>
      <source>U: expanded uncertainty, k = 2 (about 95 %). Length: largest distance across the outline; path: along it; width: largest circle within it; ratio: the greater of length and path, over width.</source>
      <translation>U: erweiterte Unsicherheit, k = 2 (etwa 95 %). Länge: größter Abstand im Umriss; Weg: entlang der Anzeige; Breite: größter Kreis darin; Verhältnis: der größere Wert von Länge und Weg durch die Breite.</translation>
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
      <source>Uncover and develop all of it, and take the photo again.</source>
      <translation>Alles freilegen und entwickeln und das Foto noch einmal aufnehmen.</translation>
    </message>
    <message>
      <source>Unless</source>
      <translation>Außer</translation>
    </message>
    <message>
      <source>Use the photo as the camera wrote it, not a copy that was sent or saved smaller.</source>
      <translation>Das Foto so verwenden, wie die Kamera es geschrieben hat, keine verschickte oder kleiner gespeicherte Kopie.</translation>
    </message>
    <message>
      <source>Use the photo as the camera wrote it, with beauty and noise filters off and more light on the surface.</source>
      <translation>Das Foto so verwenden, wie die Kamera es geschrieben hat, ohne Schönheits- und Rauschfilter und mit mehr Licht auf der Oberfläche.</translation>
    </message>
    <message>
      <source>Use the photo as the camera wrote it, with sharpening and noise filters off.</source>
      <translation>Das Foto nehmen, wie die Kamera es geschrieben hat, Schärfung und Rauschfilter ausgeschaltet.</translation>
    </message>
    <message>
      <source>Use the photo as the camera wrote it.</source>
      <translation>Das Foto so verwenden, wie die Kamera es geschrieben hat.</translation>
    </message>
    <message>
      <source>Ventilate well, confined spaces above all; wear gloves and eye protection; read the safety data sheets.</source>
      <translation>Gut lüften, vor allem enge Räume; Handschuhe und Augenschutz tragen; die Sicherheitsdatenblätter lesen.</translation>
    </message>
    <message>
      <source>Visible dye is barred on some aircraft and engine parts unless engineering approves.</source>
      <translation>Sichtbarer Farbstoff ist an manchen Flugzeug- und Triebwerksteilen untersagt, wenn die Technik ihn nicht freigibt.</translation>
    </message>
    <message>
      <source>Vision check</source>
      <translation>Sehtest</translation>
    </message>
    <message>
      <source>What is added up</source>
      <translation>Was summiert wird</translation>
    </message>
    <message>
      <source>What it gives to those it hits</source>
      <translation>Was sie dem gibt, was sie trifft</translation>
    </message>
    <message>
      <source>What the inspector should know</source>
      <translation>Was der Prüfer wissen sollte</translation>
    </message>
    <message>
      <source>What the table goes by</source>
      <translation>Wonach die Tabelle geht</translation>
    </message>
    <message>
      <source>What would decide it: {0} of {1}, measured more closely.</source>
      <translation>Es entscheiden würde: {0} von {1}, genauer gemessen.</translation>
    </message>
    <message>
      <source>What would decide it: {0}.</source>
      <translation>Es entscheiden würde: {0}.</translation>
    </message>
    <message>
      <source>Where the figure stands</source>
      <translation>Wo der Wert steht</translation>
    </message>
    <message>
      <source>Whether aligned rows also count in the sum of linear indications on the frame is not known here; add them by hand.</source>
      <translation>Ob aufgereihte Anzeigen auch in der Summe der linienartigen auf dem Rahmen zählen, ist hier nicht bekannt; von Hand hinzurechnen.</translation>
    </message>
    <message>
      <source>Whether one and the same indication must meet it, or the scene as a whole; by default the indication where all its rules look at one at a time</source>
      <translation>Ob ein und dieselbe Anzeige sie erfüllen muss oder die Szene als Ganzes; sonst die Anzeige, wo alle ihre Regeln eine für sich betrachten</translation>
    </message>
    <message>
      <source>Whether the card moved cannot be told to better than {0} mm.</source>
      <translation>Ob die Karte bewegt wurde, ist nicht besser als auf {0} mm zu sagen.</translation>
    </message>
    <message>
      <source>Whether {0} exempts it is open. {1}</source>
      <translation>Ob {0} sie ausnimmt, ist offen. {1}</translation>
    </message>
    <message>
      <source>Which indications it looks at</source>
      <translation>Welche Anzeigen sie betrachtet</translation>
    </message>
    <message>
      <source>Which size of the part</source>
      <translation>Welche Größe des Teils</translation>
    </message>
    <message>
      <source>Wiped clean</source>
      <translation>Sauber gewischt</translation>
    </message>
    <message>
      <source>Within U it may be, so the rules were also tried with it.</source>
      <translation>Innerhalb von U kann sie es sein, deshalb wurden die Regeln auch mit ihr geprüft.</translation>
    </message>
    <message>
      <source>Write it in minutes with the unit, such as 12 min, so that it can be checked.</source>
      <translation>In Minuten mit der Einheit angeben, etwa 12 min, damit es geprüft werden kann.</translation>
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
      <source>`ptmark criteria new NAME FILE.toml --from {0}` writes one to fill in</source>
      <translation>`ptmark criteria new NAME FILE.toml --from {0}` schreibt eine zum Ausfüllen</translation>
    </message>
    <message>
      <source>`ptmark criteria` lists the names</source>
      <translation>`ptmark criteria` zählt die Namen auf</translation>
    </message>
    <message>
      <source>`ptmark criteria` lists the names; a file of your own ends in .toml</source>
      <translation>`ptmark criteria` zählt die Namen auf; eine eigene Datei endet auf .toml</translation>
    </message>
    <message>
      <source>`ptmark criteria` lists them</source>
      <translation>`ptmark criteria` zählt sie auf</translation>
    </message>
    <message>
      <source>a BigTIFF</source>
      <translation>ein BigTIFF</translation>
    </message>
    <message>
      <source>a ZIP archive</source>
      <translation>ein ZIP-Archiv</translation>
    </message>
    <message>
      <source>a blob there was left out: {0}</source>
      <translation>ein Fleck dort blieb außer Acht: {0}</translation>
    </message>
    <message>
      <source>a cell of {0} mm is none</source>
      <translation>eine Zelle von {0} mm ist keine</translation>
    </message>
    <message>
      <source>a check length of {0} mm, where {1} mm is printed</source>
      <translation>eine Prüflänge von {0} mm, wo {1} mm gedruckt sind</translation>
    </message>
    <message>
      <source>a closer measurement</source>
      <translation>eine genauere Messung</translation>
    </message>
    <message>
      <source>a curve that no picture is coded by</source>
      <translation>eine Kurve, nach der kein Bild kodiert ist</translation>
    </message>
    <message>
      <source>a curve without slope</source>
      <translation>eine Kurve ohne Steigung</translation>
    </message>
    <message>
      <source>a diameter of {0} mm gives {1} mm per pixel, outside {2} to {3}</source>
      <translation>ein Durchmesser von {0} mm ergibt {1} mm je Pixel, außerhalb von {2} bis {3}</translation>
    </message>
    <message>
      <source>a file has no roles: who may write the file may change all that is in it</source>
      <translation>eine Datei hat keine Rollen: Wer die Datei schreiben darf, kann alles darin ändern</translation>
    </message>
    <message>
      <source>a height</source>
      <translation>eine Höhe</translation>
    </message>
    <message>
      <source>a hold needs a reason</source>
      <translation>eine Sperre braucht einen Grund</translation>
    </message>
    <message>
      <source>a level is reduced by 1, 2, 4 or 8, got {0}</source>
      <translation>eine Stufe ist um 1, 2, 4 oder 8 verkleinert, nicht um {0}</translation>
    </message>
    <message>
      <source>a line</source>
      <translation>eine Linie</translation>
    </message>
    <message>
      <source>a line along the pipe is missing</source>
      <translation>eine Linie längs des Rohrs fehlt</translation>
    </message>
    <message>
      <source>a number of too many digits</source>
      <translation>eine Zahl mit zu vielen Ziffern</translation>
    </message>
    <message>
      <source>a part of it reaches beyond its end</source>
      <translation>ein Teil davon reicht über sein Ende hinaus</translation>
    </message>
    <message>
      <source>a photo has no time since the developer</source>
      <translation>ein Foto hat keine Zeit seit dem Entwickler</translation>
    </message>
    <message>
      <source>a photo or a record's file is missing or changed</source>
      <translation>ein Foto oder die Datei eines Protokolls fehlt oder ist verändert</translation>
    </message>
    <message>
      <source>a photo was changed</source>
      <translation>ein Foto wurde verändert</translation>
    </message>
    <message>
      <source>a photo without a scale</source>
      <translation>ein Foto ohne Maßstab</translation>
    </message>
    <message>
      <source>a picture of {0} cannot be encoded: {1}</source>
      <translation>ein Bild von {0} kann nicht kodiert werden: {1}</translation>
    </message>
    <message>
      <source>a picture of {0} × {1} px cannot be encoded as {2}</source>
      <translation>ein Bild von {0} × {1} px kann nicht als {2} kodiert werden</translation>
    </message>
    <message>
      <source>a point has a coordinate that is no number</source>
      <translation>ein Punkt hat eine Koordinate, die keine Zahl ist</translation>
    </message>
    <message>
      <source>a preview needs at least 1 px a side, got {0}</source>
      <translation>eine Vorschau braucht mindestens 1 px je Seite, nicht {0}</translation>
    </message>
    <message>
      <source>a radial term beyond 1</source>
      <translation>ein radiales Glied über 1</translation>
    </message>
    <message>
      <source>a ratio below 1 or above {0} has no meaning, got {1}</source>
      <translation>ein Verhältnis unter 1 oder über {0} hat keinen Sinn, hier {1}</translation>
    </message>
    <message>
      <source>a relevant {0}</source>
      <translation>eine relevante {0}</translation>
    </message>
    <message>
      <source>a relief of {0} mm is no height</source>
      <translation>ein Relief von {0} mm ist keine Höhe</translation>
    </message>
    <message>
      <source>a relief of {0} mm, where the camera was {1} mm away</source>
      <translation>ein Relief von {0} mm, wo die Kamera {1} mm entfernt war</translation>
    </message>
    <message>
      <source>a row of {0} points nowhere</source>
      <translation>eine Zeile von {0} zeigt ins Leere</translation>
    </message>
    <message>
      <source>a rule about the part judges nothing by itself</source>
      <translation>eine Regel über das Teil bewertet allein nichts</translation>
    </message>
    <message>
      <source>a width</source>
      <translation>eine Breite</translation>
    </message>
    <message>
      <source>a {0} cannot be used with another reference</source>
      <translation>mit einer weiteren Referenz nicht zu verwenden: {0}</translation>
    </message>
    <message>
      <source>a {0} cannot be used with edges</source>
      <translation>{0} kann nicht mit Kanten verwendet werden</translation>
    </message>
    <message>
      <source>a {0} needs a name</source>
      <translation>eine {0} braucht einen Namen</translation>
    </message>
    <message>
      <source>a {0} needs two or more</source>
      <translation>{0} braucht zwei oder mehr</translation>
    </message>
    <message>
      <source>a {0} of mode {1} is not read</source>
      <translation>{0} im Modus {1} wird nicht gelesen</translation>
    </message>
    <message>
      <source>a {0} reference that does not fit: {1}</source>
      <translation>eine Referenz der Art {0}, die nicht passt: {1}</translation>
    </message>
    <message>
      <source>above that</source>
      <translation>darüber</translation>
    </message>
    <message>
      <source>acceptable</source>
      <translation>zulässig</translation>
    </message>
    <message>
      <source>add another photo</source>
      <translation>ein anderes Foto hinzufügen</translation>
    </message>
    <message>
      <source>add the record again</source>
      <translation>das Protokoll noch einmal aufnehmen</translation>
    </message>
    <message>
      <source>add {0!s}</source>
      <translation>{0!s} hinzufügen</translation>
    </message>
    <message>
      <source>add {0} = …</source>
      <translation>{0} = … ergänzen</translation>
    </message>
    <message>
      <source>admin option</source>
      <translation>Verwaltungsrecht</translation>
    </message>
    <message>
      <source>all of</source>
      <translation>alle aus</translation>
    </message>
    <message>
      <source>an indication named as a crack is not passed by its size alone</source>
      <translation>eine als Riss benannte Anzeige besteht nicht allein nach ihrer Größe</translation>
    </message>
    <message>
      <source>an inspection keeps one photo</source>
      <translation>eine Prüfung behält ein Foto</translation>
    </message>
    <message>
      <source>an offset is for flat surfaces</source>
      <translation>ein Versatz gilt für ebene Oberflächen</translation>
    </message>
    <message>
      <source>an offset of {0} mm, where the camera was {1} mm away</source>
      <translation>ein Versatz von {0} mm, wo die Kamera {1} mm entfernt war</translation>
    </message>
    <message>
      <source>an older database was put in its place: ptmark archive rebuild</source>
      <translation>eine ältere Datenbank wurde an ihre Stelle gesetzt: ptmark archive rebuild</translation>
    </message>
    <message>
      <source>an outline has a coordinate that is no number</source>
      <translation>ein Umriss hat eine Koordinate, die keine Zahl ist</translation>
    </message>
    <message>
      <source>an outline has shape (N, 2), got {0}</source>
      <translation>ein Umriss hat die Form (N, 2), nicht {0}</translation>
    </message>
    <message>
      <source>an outline needs 3 different points, got {0}</source>
      <translation>ein Umriss braucht 3 verschiedene Punkte, nicht {0}</translation>
    </message>
    <message>
      <source>an outline needs at least 3 points (x, y), got shape {0}</source>
      <translation>ein Umriss braucht mindestens 3 Punkte (x, y), nicht die Form {0}</translation>
    </message>
    <message>
      <source>an outline that encloses no area</source>
      <translation>ein Umriss, der keine Fläche umschließt</translation>
    </message>
    <message>
      <source>an outline that reaches beyond the surface's horizon</source>
      <translation>ein Umriss, der über den Horizont der Oberfläche reicht</translation>
    </message>
    <message>
      <source>an outside diameter</source>
      <translation>ein Außendurchmesser</translation>
    </message>
    <message>
      <source>and</source>
      <translation>und</translation>
    </message>
    <message>
      <source>and the</source>
      <translation>und der</translation>
    </message>
    <message>
      <source>and {0} more</source>
      <translation>und {0} weitere</translation>
    </message>
    <message>
      <source>another camera, zoom or size than {0!s}</source>
      <translation>andere Kamera, anderer Zoom oder andere Größe als {0!s}</translation>
    </message>
    <message>
      <source>another copy is being made there</source>
      <translation>dorthin wird gerade eine andere Kopie gemacht</translation>
    </message>
    <message>
      <source>another indication lies so near that the two may be mixed up</source>
      <translation>eine weitere Anzeige liegt so nahe, dass beide verwechselt sein können</translation>
    </message>
    <message>
      <source>another program is writing: try again</source>
      <translation>ein anderes Programm schreibt gerade: noch einmal versuchen</translation>
    </message>
    <message>
      <source>another state is kept: revision {0}, file {1!s}…</source>
      <translation>ein anderer Stand ist aufbewahrt: Fassung {0}, Datei {1!s}…</translation>
    </message>
    <message>
      <source>another state of record {0} lies there, revision {1}</source>
      <translation>ein anderer Stand des Protokolls {0} liegt dort, Fassung {1}</translation>
    </message>
    <message>
      <source>any</source>
      <translation>jede</translation>
    </message>
    <message>
      <source>any crack but a crater or star crack, whatever its size</source>
      <translation>jeder Riss außer Krater- oder Sternriss, gleich welcher Größe</translation>
    </message>
    <message>
      <source>arc strike</source>
      <translation>Zündstelle</translation>
    </message>
    <message>
      <source>area</source>
      <translation>Fläche</translation>
    </message>
    <message>
      <source>area that is examined</source>
      <translation>der Prüfbereich</translation>
    </message>
    <message>
      <source>as ISO 4987, 6.1.2; AP, single, for the level and wall</source>
      <translation>wie ISO 4987, 6.1.2; AP, einzeln, für Stufe und Wanddicke</translation>
    </message>
    <message>
      <source>as carried in US Army UFGS 15216N, 3.5.3</source>
      <translation>wie in US Army UFGS 15216N, 3.5.3</translation>
    </message>
    <message>
      <source>as given by the user's procedure</source>
      <translation>wie die Verfahrensanweisung des Benutzers es angibt</translation>
    </message>
    <message>
      <source>ask for permission to write there</source>
      <translation>um Schreibrecht dort bitten</translation>
    </message>
    <message>
      <source>ask who runs the server for the role</source>
      <translation>den Betreiber des Servers um die Rolle bitten</translation>
    </message>
    <message>
      <source>at least</source>
      <translation>mindestens</translation>
    </message>
    <message>
      <source>at least {0}</source>
      <translation>mindestens {0}</translation>
    </message>
    <message>
      <source>at least {0} min</source>
      <translation>mindestens {0} min</translation>
    </message>
    <message>
      <source>at least {0} °C ({1!s})</source>
      <translation>mindestens {0} °C ({1!s})</translation>
    </message>
    <message>
      <source>at most {0} min</source>
      <translation>höchstens {0} min</translation>
    </message>
    <message>
      <source>at most {0} °C ({1!s})</source>
      <translation>höchstens {0} °C ({1!s})</translation>
    </message>
    <message>
      <source>at {0} min the least that it can be, as not all of it may be shown</source>
      <translation>bei {0} min das Mindeste, was es sein kann, da vielleicht nicht alles davon zu sehen ist</translation>
    </message>
    <message>
      <source>begin each rule with a line [[rule]]</source>
      <translation>jede Regel mit einer Zeile [[rule]] beginnen</translation>
    </message>
    <message>
      <source>begin each with a line [[rule]]</source>
      <translation>jede mit einer Zeile [[rule]] beginnen</translation>
    </message>
    <message>
      <source>begin the review again on the newest revision</source>
      <translation>die Gegenprüfung an der neuesten Fassung neu beginnen</translation>
    </message>
    <message>
      <source>both ends of {0} are the same point</source>
      <translation>beide Enden sind derselbe Punkt: {0}</translation>
    </message>
    <message>
      <source>both photos need a surface</source>
      <translation>beide Fotos brauchen eine Oberfläche</translation>
    </message>
    <message>
      <source>brackets too deep</source>
      <translation>zu tief geschachtelte Klammern</translation>
    </message>
    <message>
      <source>branching crack</source>
      <translation>verästelter Riss</translation>
    </message>
    <message>
      <source>bring reference and indication to the middle of the picture, near each other, or calibrate the camera: {0} of it is the lens</source>
      <translation>Referenz und Anzeige in die Bildmitte bringen, nahe beieinander, oder die Kamera kalibrieren: {0} davon ist das Objektiv</translation>
    </message>
    <message>
      <source>burn through</source>
      <translation>Durchbrand</translation>
    </message>
    <message>
      <source>byte {0} ({1}) is not as this program writes it</source>
      <translation>Byte {0} ({1}) ist nicht so, wie dieses Programm es schreibt</translation>
    </message>
    <message>
      <source>calibrate each camera and each zoom on its own</source>
      <translation>jede Kamera und jeden Zoom für sich kalibrieren</translation>
    </message>
    <message>
      <source>cannot be listed ({0})</source>
      <translation>kann nicht aufgelistet werden ({0})</translation>
    </message>
    <message>
      <source>cannot be made ({0})</source>
      <translation>kann nicht angelegt werden ({0})</translation>
    </message>
    <message>
      <source>cannot be opened</source>
      <translation>kann nicht geöffnet werden</translation>
    </message>
    <message>
      <source>cannot be read ({0})</source>
      <translation>kann nicht gelesen werden ({0})</translation>
    </message>
    <message>
      <source>cannot be read or written ({0})</source>
      <translation>kann nicht gelesen oder geschrieben werden ({0})</translation>
    </message>
    <message>
      <source>cannot be read, and no other line of the log ({0})</source>
      <translation>kann nicht gelesen werden und auch keine andere Zeile des Protokolls ({0})</translation>
    </message>
    <message>
      <source>cannot be read: {0}</source>
      <translation>kann nicht gelesen werden: {0}</translation>
    </message>
    <message>
      <source>cannot be used: {0}</source>
      <translation>kann nicht verwendet werden: {0}</translation>
    </message>
    <message>
      <source>cannot be written as JSON: {0}</source>
      <translation>kann nicht als JSON geschrieben werden: {0}</translation>
    </message>
    <message>
      <source>cannot keep the camera profile: {0}</source>
      <translation>das Kameraprofil kann nicht aufbewahrt werden: {0}</translation>
    </message>
    <message>
      <source>cannot write {0}: {1}</source>
      <translation>kann nicht geschrieben werden, {0}: {1}</translation>
    </message>
    <message>
      <source>card</source>
      <translation>Karte</translation>
    </message>
    <message>
      <source>cavity</source>
      <translation>Hohlraum</translation>
    </message>
    <message>
      <source>changed</source>
      <translation>verändert</translation>
    </message>
    <message>
      <source>check --developed, or give --minutes</source>
      <translation>--developed prüfen oder --minutes angeben</translation>
    </message>
    <message>
      <source>check each of them</source>
      <translation>jede davon prüfen</translation>
    </message>
    <message>
      <source>check the URL's scheme</source>
      <translation>das Schema der URL prüfen</translation>
    </message>
    <message>
      <source>check the diameter and its unit</source>
      <translation>den Durchmesser und seine Einheit prüfen</translation>
    </message>
    <message>
      <source>check the diameter, and that the edges are the pipe's; lay the reference on the pipe so that it touches along a line, or use edges or reference alone</source>
      <translation>den Durchmesser prüfen und ob die Kanten die des Rohrs sind; die Referenz so auf das Rohr legen, dass sie es längs einer Linie berührt, oder Kanten oder Referenz allein verwenden</translation>
    </message>
    <message>
      <source>check the file by hand</source>
      <translation>die Datei von Hand prüfen</translation>
    </message>
    <message>
      <source>check the file's rights</source>
      <translation>die Rechte der Datei prüfen</translation>
    </message>
    <message>
      <source>check the length and its unit</source>
      <translation>die Länge und ihre Einheit prüfen</translation>
    </message>
    <message>
      <source>check the length, its unit and the two ends; on a rule with other graduations take a card or a rectangle</source>
      <translation>die Länge, ihre Einheit und die beiden Enden prüfen; bei einem Maßstab mit anderer Teilung eine Karte oder ein Rechteck nehmen</translation>
    </message>
    <message>
      <source>check the name</source>
      <translation>den Namen prüfen</translation>
    </message>
    <message>
      <source>check the name and that you may read it</source>
      <translation>den Namen und das Leserecht prüfen</translation>
    </message>
    <message>
      <source>check the passphrase and the file</source>
      <translation>Kennwort und Datei prüfen</translation>
    </message>
    <message>
      <source>check the scale reference, or take a photo less aslant</source>
      <translation>die Maßstabsreferenz prüfen oder ein weniger schräges Foto aufnehmen</translation>
    </message>
    <message>
      <source>check the two sides: width runs from the first corner to the second</source>
      <translation>die beiden Seiten prüfen: Die Breite läuft von der ersten Ecke zur zweiten</translation>
    </message>
    <message>
      <source>check their order</source>
      <translation>ihre Reihenfolge prüfen</translation>
    </message>
    <message>
      <source>choose 1 to {0}</source>
      <translation>1 bis {0} wählen</translation>
    </message>
    <message>
      <source>choose A4 or Letter</source>
      <translation>A4 oder Letter wählen</translation>
    </message>
    <message>
      <source>choose a folder that can be written to</source>
      <translation>einen Ordner wählen, in den geschrieben werden kann</translation>
    </message>
    <message>
      <source>choose a record's JSON file</source>
      <translation>die JSON-Datei eines Protokolls wählen</translation>
    </message>
    <message>
      <source>choose an export's folder</source>
      <translation>den Ordner eines Exports wählen</translation>
    </message>
    <message>
      <source>choose another</source>
      <translation>einen anderen wählen</translation>
    </message>
    <message>
      <source>choose another folder</source>
      <translation>einen anderen Ordner wählen</translation>
    </message>
    <message>
      <source>choose another folder, or move that one away</source>
      <translation>einen anderen Ordner wählen oder diesen verlegen</translation>
    </message>
    <message>
      <source>choose another folder; export and import carry records from one to another</source>
      <translation>einen anderen Ordner wählen; Ausgeben und Übernehmen bringen Protokolle von einem zum anderen</translation>
    </message>
    <message>
      <source>choose another name</source>
      <translation>einen anderen Namen wählen</translation>
    </message>
    <message>
      <source>choose another name, or take that one away first</source>
      <translation>anderen Namen wählen oder jene zuerst aufheben</translation>
    </message>
    <message>
      <source>choose another name; what was signed stays</source>
      <translation>einen anderen Namen wählen; was unterschrieben ist, bleibt</translation>
    </message>
    <message>
      <source>choose marks round the area</source>
      <translation>Marken rund um den Bereich wählen</translation>
    </message>
    <message>
      <source>choose one of: {0}</source>
      <translation>eines wählen: {0}</translation>
    </message>
    <message>
      <source>choose {0}</source>
      <translation>{0} wählen</translation>
    </message>
    <message>
      <source>clustered porosity</source>
      <translation>Porennest</translation>
    </message>
    <message>
      <source>clusters go by their extent, scattered pores by charts; the interpreter must compare</source>
      <translation>Porennester gehen nach ihrer Ausdehnung, verstreute Poren nach Vergleichsbildern; der Auswertende muss vergleichen</translation>
    </message>
    <message>
      <source>colour contrast</source>
      <translation>Farbkontrast</translation>
    </message>
    <message>
      <source>common practice</source>
      <translation>übliche Praxis</translation>
    </message>
    <message>
      <source>compare what each photo gives by itself</source>
      <translation>vergleichen, was jedes Foto für sich ergibt</translation>
    </message>
    <message>
      <source>conflicting</source>
      <translation>widersprüchlich</translation>
    </message>
    <message>
      <source>contents not to be had: our own list of what a record in photos must tell</source>
      <translation>Inhalt nicht zu bekommen: unsere eigene Liste dessen, was eine Aufzeichnung in Fotos sagen muss</translation>
    </message>
    <message>
      <source>corners picked anticlockwise: taken clockwise from the first</source>
      <translation>Ecken gegen den Uhrzeigersinn gesetzt: von der ersten an im Uhrzeigersinn genommen</translation>
    </message>
    <message>
      <source>corners {0} and {1} are the same point</source>
      <translation>die Ecken {0} und {1} sind derselbe Punkt</translation>
    </message>
    <message>
      <source>correct that field, or take an earlier copy of the record</source>
      <translation>dieses Feld berichtigen oder eine frühere Kopie des Protokolls nehmen</translation>
    </message>
    <message>
      <source>course of the weld</source>
      <translation>Verlauf der Naht</translation>
    </message>
    <message>
      <source>crack</source>
      <translation>Riss</translation>
    </message>
    <message>
      <source>crater crack</source>
      <translation>Endkraterriss</translation>
    </message>
    <message>
      <source>crater pipe</source>
      <translation>Endkraterlunker</translation>
    </message>
    <message>
      <source>criteria new</source>
      <translation>criteria new</translation>
    </message>
    <message>
      <source>damaged</source>
      <translation>beschädigt</translation>
    </message>
    <message>
      <source>darkest: {0} records in a cell of {1} mm</source>
      <translation>am dunkelsten: {0} Protokolle in einer Zelle von {1} mm</translation>
    </message>
    <message>
      <source>delete it; the default holds then</source>
      <translation>löschen; dann gilt die Vorgabe</translation>
    </message>
    <message>
      <source>delete {0}</source>
      <translation>{0} löschen</translation>
    </message>
    <message>
      <source>departs from the verdict</source>
      <translation>weicht von der Bewertung ab</translation>
    </message>
    <message>
      <source>diameter</source>
      <translation>Durchmesser</translation>
    </message>
    <message>
      <source>diameter of the part</source>
      <translation>Durchmesser des Teils</translation>
    </message>
    <message>
      <source>differs from its checksum</source>
      <translation>weicht von der Prüfsumme ab</translation>
    </message>
    <message>
      <source>differs from its file in the {0}</source>
      <translation>nicht so wie in der Datei: {0}</translation>
    </message>
    <message>
      <source>differs from what the log holds</source>
      <translation>weicht von dem ab, was das Logbuch enthält</translation>
    </message>
    <message>
      <source>distance {0} mm</source>
      <translation>Abstand {0} mm</translation>
    </message>
    <message>
      <source>distortion of the lens</source>
      <translation>Verzeichnung des Objektivs</translation>
    </message>
    <message>
      <source>does not fit: {0}</source>
      <translation>passt nicht: {0}</translation>
    </message>
    <message>
      <source>does not follow the one before it</source>
      <translation>folgt nicht auf die davor</translation>
    </message>
    <message>
      <source>dropped by the inspector</source>
      <translation>vom Prüfer verworfen</translation>
    </message>
    <message>
      <source>dropped {0}</source>
      <translation>{0} gestrichen</translation>
    </message>
    <message>
      <source>each end by hand strays by {0} px, a stated default: not traced again</source>
      <translation>jedes Ende von Hand streut um {0} px, ein angegebener Vorgabewert: nicht noch einmal nachgezogen</translation>
    </message>
    <message>
      <source>each end by hand strays by {0} px, estimated from repeat traces</source>
      <translation>jedes Ende von Hand streut um {0} px, aus wiederholtem Nachziehen geschätzt</translation>
    </message>
    <message>
      <source>each end by hand strays by {0} px, estimated from repeat traces: {1} degrees of freedom</source>
      <translation>jedes Ende von Hand streut um {0} px, aus wiederholtem Nachziehen geschätzt: {1} Freiheitsgrade</translation>
    </message>
    <message>
      <source>each indication</source>
      <translation>jede Anzeige</translation>
    </message>
    <message>
      <source>each indication named {0} (ISO 6520-1), any size, relevant or not</source>
      <translation>jede Anzeige benannt {0} (ISO 6520-1), jede Größe, relevant oder nicht</translation>
    </message>
    <message>
      <source>each indication {0}</source>
      <translation>jede Anzeige {0}</translation>
    </message>
    <message>
      <source>each linear indication</source>
      <translation>jede linienartige Anzeige</translation>
    </message>
    <message>
      <source>each linear indication {0}</source>
      <translation>jede linienartige Anzeige {0}</translation>
    </message>
    <message>
      <source>each mark needs a place in both photos</source>
      <translation>jede Marke braucht eine Stelle in beiden Fotos</translation>
    </message>
    <message>
      <source>each rounded indication</source>
      <translation>jede nicht linienartige Anzeige</translation>
    </message>
    <message>
      <source>each rounded indication {0}</source>
      <translation>jede nicht linienartige Anzeige {0}</translation>
    </message>
    <message>
      <source>each side of the card's squares seems {0} mm off: ink that spread, or a photo whose dark edges were moved by tone mapping, a filter or a scanning program, those of indications too. Use the photo as the camera wrote it, and print the card sharply on smooth paper</source>
      <translation>jede Seite der Quadrate der Karte scheint um {0} mm verschoben: Tinte, die verlief, oder ein Foto, dessen dunkle Kanten durch Tonwertanpassung, einen Filter oder ein Scanprogramm verschoben wurden, auch die der Anzeigen. Das Foto nehmen, wie die Kamera es geschrieben hat, und die Karte scharf auf glattes Papier drucken</translation>
    </message>
    <message>
      <source>each {0}indication{1}</source>
      <translation>jede {0}Anzeige{1}</translation>
    </message>
    <message>
      <source>earlier</source>
      <translation>früheres</translation>
    </message>
    <message>
      <source>edges, diameter and the reference on the pipe fit together badly (1 in 20 right ones do): look whether the reference lies on it, and whether the edges are right</source>
      <translation>Kanten, Durchmesser und die Referenz auf dem Rohr passen schlecht zusammen (so passt 1 von 20 richtigen): nachsehen, ob die Referenz aufliegt und ob die Kanten stimmen</translation>
    </message>
    <message>
      <source>edition not confirmed</source>
      <translation>Ausgabe nicht bestätigt</translation>
    </message>
    <message>
      <source>elongated cavity</source>
      <translation>Gaskanal</translation>
    </message>
    <message>
      <source>end the name in .png, .jpg or .jpeg</source>
      <translation>den Namen auf .png, .jpg oder .jpeg enden lassen</translation>
    </message>
    <message>
      <source>end to end</source>
      <translation>von Ende zu Ende</translation>
    </message>
    <message>
      <source>ends at line {0}, but {1} lines were written</source>
      <translation>endet bei Zeile {0}, aber {1} Zeilen wurden geschrieben</translation>
    </message>
    <message>
      <source>examined area</source>
      <translation>geprüfter Bereich</translation>
    </message>
    <message>
      <source>examiner</source>
      <translation>Prüfer</translation>
    </message>
    <message>
      <source>exempt by size, shape, named kind, edge or part</source>
      <translation>nach Größe, Form, benannter Art, Kante oder Teil ausnehmen</translation>
    </message>
    <message>
      <source>export it again</source>
      <translation>noch einmal ausgeben</translation>
    </message>
    <message>
      <source>false</source>
      <translation>Scheinanzeige</translation>
    </message>
    <message>
      <source>features and scales</source>
      <translation>Merkmale und Maßstäbe</translation>
    </message>
    <message>
      <source>file, byte {0} ({1})</source>
      <translation>Datei, Byte {0} ({1})</translation>
    </message>
    <message>
      <source>first</source>
      <translation>erste</translation>
    </message>
    <message>
      <source>fit of the map from photo to surface</source>
      <translation>Anpassung der Abbildung vom Foto auf die Oberfläche</translation>
    </message>
    <message>
      <source>fitted with a second reference ({0}), which differs by {1} %, En {2}</source>
      <translation>mit einer zweiten Referenz angepasst ({0}), die um {1} % abweicht, En {2}</translation>
    </message>
    <message>
      <source>flux inclusion</source>
      <translation>Flussmitteleinschluss</translation>
    </message>
    <message>
      <source>focal length</source>
      <translation>Brennweite</translation>
    </message>
    <message>
      <source>follows the one before</source>
      <translation>folgt auf die davor</translation>
    </message>
    <message>
      <source>from here on the file is larger than {0} kB, so it is no profile</source>
      <translation>von hier an ist die Datei größer als {0} kB, also kein Profil</translation>
    </message>
    <message>
      <source>from memory</source>
      <translation>aus dem Gedächtnis</translation>
    </message>
    <message>
      <source>further photos</source>
      <translation>weitere Fotos</translation>
    </message>
    <message>
      <source>gap smaller than the length of the smaller neighbour, repeated until nothing merges</source>
      <translation>Abstand kleiner als die Länge des kleineren Nachbarn, wiederholt, bis nichts mehr verschmilzt</translation>
    </message>
    <message>
      <source>gas cavity</source>
      <translation>Gashohlraum</translation>
    </message>
    <message>
      <source>gas pore</source>
      <translation>Gaspore</translation>
    </message>
    <message>
      <source>gave no usable time stamp ({0})</source>
      <translation>gab keinen brauchbaren Zeitstempel ({0})</translation>
    </message>
    <message>
      <source>give a PNG or JPEG</source>
      <translation>ein PNG oder JPEG angeben</translation>
    </message>
    <message>
      <source>give a URL as postgresql://NAME@HOST/DATABASE</source>
      <translation>eine URL wie postgresql://NAME@HOST/DATABASE angeben</translation>
    </message>
    <message>
      <source>give a name, and examiner or reviewer as the role</source>
      <translation>einen Namen und die Rolle Prüfer oder Gegenprüfer angeben</translation>
    </message>
    <message>
      <source>give a remark</source>
      <translation>eine Bemerkung angeben</translation>
    </message>
    <message>
      <source>give another name, or open that one</source>
      <translation>einen anderen Namen angeben oder jenes öffnen</translation>
    </message>
    <message>
      <source>give another one; two cards of different sets are found by themselves</source>
      <translation>eine andere angeben; zwei Karten verschiedener Sätze werden von selbst gefunden</translation>
    </message>
    <message>
      <source>give at least four</source>
      <translation>mindestens vier angeben</translation>
    </message>
    <message>
      <source>give each photo a scale reference</source>
      <translation>jedem Foto eine Maßstabsreferenz geben</translation>
    </message>
    <message>
      <source>give each rule an id of its own</source>
      <translation>jeder Regel eine eigene Kennung geben</translation>
    </message>
    <message>
      <source>give every photo of the record, in its order</source>
      <translation>jedes Foto des Protokolls in seiner Reihenfolge angeben</translation>
    </message>
    <message>
      <source>give how far the reference lies above the surface</source>
      <translation>angeben, wie hoch die Referenz über der Oberfläche liegt</translation>
    </message>
    <message>
      <source>give https://…</source>
      <translation>https://… angeben</translation>
    </message>
    <message>
      <source>give its corners in order, once round what is examined</source>
      <translation>die Ecken der Reihe nach angeben, einmal um das Geprüfte herum</translation>
    </message>
    <message>
      <source>give its corners in pixels of the upright photo</source>
      <translation>die Ecken in Pixeln des aufrechten Fotos angeben</translation>
    </message>
    <message>
      <source>give its folder with --photos</source>
      <translation>seinen Ordner mit --photos angeben</translation>
    </message>
    <message>
      <source>give one for each</source>
      <translation>für jedes eines angeben</translation>
    </message>
    <message>
      <source>give one of the two</source>
      <translation>eines von beiden angeben</translation>
    </message>
    <message>
      <source>give records of the same photo by the same examiner</source>
      <translation>Protokolle desselben Fotos vom selben Prüfer angeben</translation>
    </message>
    <message>
      <source>give the file that was measured</source>
      <translation>die Datei angeben, die gemessen wurde</translation>
    </message>
    <message>
      <source>give the height of the indications over the reference</source>
      <translation>die Höhe der Anzeigen über der Referenz angeben</translation>
    </message>
    <message>
      <source>give the id of one of its rules; `ptmark criteria show` lists them</source>
      <translation>die Kennung einer seiner Regeln angeben; `ptmark criteria show` zählt sie auf</translation>
    </message>
    <message>
      <source>give the minutes of each</source>
      <translation>die Minuten von jedem angeben</translation>
    </message>
    <message>
      <source>give the minutes since the developer with --minutes</source>
      <translation>die Minuten seit dem Entwickler mit --minutes angeben</translation>
    </message>
    <message>
      <source>give the number</source>
      <translation>die Nummer angeben</translation>
    </message>
    <message>
      <source>give the photo that was measured</source>
      <translation>das Foto angeben, das gemessen wurde</translation>
    </message>
    <message>
      <source>give the true length, above zero</source>
      <translation>die wahre Länge angeben, über null</translation>
    </message>
    <message>
      <source>give two or more</source>
      <translation>zwei oder mehr angeben</translation>
    </message>
    <message>
      <source>give years from above 0 to below {0} and the contract or law that asks for them</source>
      <translation>Jahre über 0 und unter {0} angeben, und den Vertrag oder das Gesetz, das sie verlangt</translation>
    </message>
    <message>
      <source>give your own name</source>
      <translation>einen eigenen Namen angeben</translation>
    </message>
    <message>
      <source>given differently by different sources</source>
      <translation>von verschiedenen Quellen verschieden angegeben</translation>
    </message>
    <message>
      <source>go closer: {0} of it is the photo's sampling</source>
      <translation>näher herangehen: {0} davon ist die Abtastung des Fotos</translation>
    </message>
    <message>
      <source>group of disconnected cracks</source>
      <translation>Gruppe unverbundener Risse</translation>
    </message>
    <message>
      <source>guarded</source>
      <translation>mit Unsicherheit</translation>
    </message>
    <message>
      <source>guarded acceptance: acceptable only where value + U is within the limit; U is the expanded uncertainty, k = 2</source>
      <translation>Annahme mit Sicherheit: zulässig nur, wo Wert + U innerhalb der Grenze liegt; U ist die erweiterte Unsicherheit, k = 2</translation>
    </message>
    <message>
      <source>guarded or simple</source>
      <translation>guarded oder simple</translation>
    </message>
    <message>
      <source>has a sign that cannot be shown, {0}</source>
      <translation>hat ein Zeichen, das nicht gezeigt werden kann, {0}</translation>
    </message>
    <message>
      <source>has no canonical JSON: {0}</source>
      <translation>hat kein kanonisches JSON: {0}</translation>
    </message>
    <message>
      <source>has no meaning without bands</source>
      <translation>hat ohne Stufen keinen Sinn</translation>
    </message>
    <message>
      <source>has no seal to find changes by</source>
      <translation>hat kein Siegel, an dem Änderungen zu finden wären</translation>
    </message>
    <message>
      <source>has no unit</source>
      <translation>hat keine Einheit</translation>
    </message>
    <message>
      <source>has the photos with their locations and would be replaced by one that no archive takes in</source>
      <translation>hat die Fotos mit ihren Orten und würde durch eines ersetzt, das kein Archiv aufnimmt</translation>
    </message>
    <message>
      <source>has unit '{0!s}'</source>
      <translation>hat die Einheit „{0!s}“</translation>
    </message>
    <message>
      <source>have it signed first: a review belongs to what was signed</source>
      <translation>erst unterschreiben lassen: Eine Gegenprüfung gehört zu dem, was unterschrieben ist</translation>
    </message>
    <message>
      <source>height</source>
      <translation>Höhe</translation>
    </message>
    <message>
      <source>height of the indication above the plane of the scale</source>
      <translation>Höhe der Anzeige über der Ebene des Maßstabs</translation>
    </message>
    <message>
      <source>holds a database that cannot be read ({0})</source>
      <translation>enthält eine Datenbank, die nicht gelesen werden kann ({0})</translation>
    </message>
    <message>
      <source>holds a state of this record that this archive has not</source>
      <translation>enthält einen Stand dieses Protokolls, den dieses Archiv nicht hat</translation>
    </message>
    <message>
      <source>holds a text that this server cannot keep: {0}</source>
      <translation>enthält einen Text, den dieser Server nicht aufbewahren kann: {0}</translation>
    </message>
    <message>
      <source>holds another archive, or a copy that was written to since</source>
      <translation>enthält ein anderes Archiv oder eine Kopie, in die seither geschrieben wurde</translation>
    </message>
    <message>
      <source>holds no bundle</source>
      <translation>enthält kein Paket</translation>
    </message>
    <message>
      <source>holds no record.json</source>
      <translation>enthält keine record.json</translation>
    </message>
    <message>
      <source>holds other ends than the numbers have</source>
      <translation>enthält andere Enden, als die Nummern haben</translation>
    </message>
    <message>
      <source>holds the archive's own photos: no second copy of them would be made</source>
      <translation>enthält die eigenen Fotos des Archivs: Es entstünde keine zweite Kopie von ihnen</translation>
    </message>
    <message>
      <source>holds the name {0}</source>
      <translation>enthält den Namen {0}</translation>
    </message>
    <message>
      <source>holds the signed record {0} of another inspection</source>
      <translation>enthält das unterschriebene Protokoll {0} einer anderen Prüfung</translation>
    </message>
    <message>
      <source>house rules</source>
      <translation>Hausregeln</translation>
    </message>
    <message>
      <source>house rules, name</source>
      <translation>Hausregeln, Name</translation>
    </message>
    <message>
      <source>how far a pipe bulges towards the camera, by the focal length</source>
      <translation>wie weit sich ein Rohr zur Kamera wölbt, nach der Brennweite</translation>
    </message>
    <message>
      <source>ids of other rules, with commas between them</source>
      <translation>Kennungen anderer Regeln, mit Kommas dazwischen</translation>
    </message>
    <message>
      <source>image noise and pixels along the outline</source>
      <translation>Bildrauschen und Pixel entlang des Umrisses</translation>
    </message>
    <message>
      <source>in a hull of</source>
      <translation>in einer Hülle von</translation>
    </message>
    <message>
      <source>in a line with gaps of {0}</source>
      <translation>in einer Reihe mit Abständen von {0}</translation>
    </message>
    <message>
      <source>in a rectangle of {0}</source>
      <translation>in einem Rechteck von {0}</translation>
    </message>
    <message>
      <source>in any {0} {1} of weld</source>
      <translation>auf je {0} {1} Naht</translation>
    </message>
    <message>
      <source>in the photo after, {0}</source>
      <translation>im Foto nachher, {0}</translation>
    </message>
    <message>
      <source>in the photo before, {0}</source>
      <translation>im Foto vorher, {0}</translation>
    </message>
    <message>
      <source>in {0}</source>
      <translation>in {0}</translation>
    </message>
    <message>
      <source>in {0} {1} of weld</source>
      <translation>auf {0} {1} Naht</translation>
    </message>
    <message>
      <source>inclusion</source>
      <translation>Einschluss</translation>
    </message>
    <message>
      <source>incomplete fusion</source>
      <translation>ungenügende Bindung</translation>
    </message>
    <message>
      <source>incomplete penetration</source>
      <translation>ungenügende Durchschweißung</translation>
    </message>
    <message>
      <source>indication</source>
      <translation>Anzeige</translation>
    </message>
    <message>
      <source>indication {0}</source>
      <translation>Anzeige {0}</translation>
    </message>
    <message>
      <source>indications</source>
      <translation>Anzeigen</translation>
    </message>
    <message>
      <source>indications named {0}</source>
      <translation>Anzeigen, benannt {0}</translation>
    </message>
    <message>
      <source>inspection</source>
      <translation>Prüfungsdaten</translation>
    </message>
    <message>
      <source>is a link that leads back to itself</source>
      <translation>ist eine Verknüpfung, die auf sich selbst führt</translation>
    </message>
    <message>
      <source>is another line of the log, or tells nothing</source>
      <translation>ist eine andere Zeile des Protokolls oder sagt nichts aus</translation>
    </message>
    <message>
      <source>is larger than {0} MB, no record is</source>
      <translation>ist größer als {0} MB, das ist kein Protokoll</translation>
    </message>
    <message>
      <source>is missing</source>
      <translation>fehlt</translation>
    </message>
    <message>
      <source>is nested too deeply</source>
      <translation>ist zu tief verschachtelt</translation>
    </message>
    <message>
      <source>is no address of a time-stamping authority</source>
      <translation>ist keine Adresse einer Zeitstempelstelle</translation>
    </message>
    <message>
      <source>is no bundle of a record</source>
      <translation>ist kein Paket eines Protokolls</translation>
    </message>
    <message>
      <source>is no line of the log ({0})</source>
      <translation>ist keine Zeile des Logbuchs ({0})</translation>
    </message>
    <message>
      <source>is no list of revisions</source>
      <translation>ist keine Liste von Fassungen</translation>
    </message>
    <message>
      <source>is no logo of a known kind and size</source>
      <translation>ist kein Logo bekannter Art und Größe</translation>
    </message>
    <message>
      <source>is no record ({0})</source>
      <translation>ist kein Protokoll ({0})</translation>
    </message>
    <message>
      <source>is no usable PKCS #12 file ({0})</source>
      <translation>ist keine brauchbare Datei nach PKCS #12 ({0})</translation>
    </message>
    <message>
      <source>is no whole PDF: {0}</source>
      <translation>ist kein ganzes PDF: {0}</translation>
    </message>
    <message>
      <source>is no whole ZIP: {0}</source>
      <translation>ist kein ganzes ZIP: {0}</translation>
    </message>
    <message>
      <source>is not JSON: {0} (line {1}, column {2})</source>
      <translation>ist kein JSON: {0} (Zeile {1}, Spalte {2})</translation>
    </message>
    <message>
      <source>is not UTF-8 text (byte {0})</source>
      <translation>ist kein Text in UTF-8 (Byte {0})</translation>
    </message>
    <message>
      <source>is not among the photos given for the report</source>
      <translation>ist nicht unter den Fotos, die für den Bericht gegeben sind</translation>
    </message>
    <message>
      <source>is not an inspection record</source>
      <translation>ist kein Prüfprotokoll</translation>
    </message>
    <message>
      <source>is not in the archive</source>
      <translation>ist nicht im Archiv</translation>
    </message>
    <message>
      <source>is not in the store</source>
      <translation>ist nicht im Speicher</translation>
    </message>
    <message>
      <source>is not signed</source>
      <translation>ist nicht unterschrieben</translation>
    </message>
    <message>
      <source>is not signed with a trusted key</source>
      <translation>ist nicht mit einem vertrauten Schlüssel unterschrieben</translation>
    </message>
    <message>
      <source>is not strict JSON: {0}</source>
      <translation>ist kein strenges JSON: {0}</translation>
    </message>
    <message>
      <source>is not the one of the record: changed</source>
      <translation>ist nicht das des Protokolls: verändert</translation>
    </message>
    <message>
      <source>is not the photo of this record: its SHA-256 differs</source>
      <translation>ist nicht das Foto dieses Protokolls: Der SHA-256 weicht ab</translation>
    </message>
    <message>
      <source>is not the revision that the review was begun on</source>
      <translation>ist nicht die Fassung, an der die Gegenprüfung begonnen wurde</translation>
    </message>
    <message>
      <source>is not the state that the log tells</source>
      <translation>ist nicht der Stand, den das Logbuch nennt</translation>
    </message>
    <message>
      <source>is not valid TOML: {0}</source>
      <translation>ist kein gültiges TOML: {0}</translation>
    </message>
    <message>
      <source>is not what was taken in</source>
      <translation>ist nicht das, was aufgenommen wurde</translation>
    </message>
    <message>
      <source>is signed with a trusted key</source>
      <translation>ist mit einem vertrauten Schlüssel unterschrieben</translation>
    </message>
    <message>
      <source>is still to be filled in</source>
      <translation>ist noch auszufüllen</translation>
    </message>
    <message>
      <source>is the archive itself</source>
      <translation>ist das Archiv selbst</translation>
    </message>
    <message>
      <source>is the photo itself, which is never written over</source>
      <translation>ist das Foto selbst, das nie überschrieben wird</translation>
    </message>
    <message>
      <source>is too large for a bundle</source>
      <translation>ist zu groß für ein Paket</translation>
    </message>
    <message>
      <source>is unknown here</source>
      <translation>ist hier unbekannt</translation>
    </message>
    <message>
      <source>it claims colour type {0} with {1} bits</source>
      <translation>nennt Farbart {0} mit {1} Bit</translation>
    </message>
    <message>
      <source>it claims more than {0} scans</source>
      <translation>nennt mehr als {0} Durchgänge</translation>
    </message>
    <message>
      <source>it claims {0} colour channels</source>
      <translation>nennt {0} Farbkanäle</translation>
    </message>
    <message>
      <source>it does not begin with a header</source>
      <translation>beginnt nicht mit einem Kopf</translation>
    </message>
    <message>
      <source>it does not say where its data stand</source>
      <translation>sagt nicht, wo die Daten stehen</translation>
    </message>
    <message>
      <source>it ends without any picture data</source>
      <translation>endet ohne Bilddaten</translation>
    </message>
    <message>
      <source>it goes on in {0} lines beside the photos: rebuild the database</source>
      <translation>es geht in {0} Zeilen neben den Fotos weiter: die Datenbank neu aufbauen</translation>
    </message>
    <message>
      <source>it has no frame header</source>
      <translation>hat keinen Bildkopf</translation>
    </message>
    <message>
      <source>it holds no picture</source>
      <translation>enthält kein Bild</translation>
    </message>
    <message>
      <source>it holds no picture data</source>
      <translation>enthält keine Bilddaten</translation>
    </message>
    <message>
      <source>it is a folder</source>
      <translation>das ist ein Ordner</translation>
    </message>
    <message>
      <source>it is a link that leads back to itself</source>
      <translation>das ist eine Verknüpfung, die auf sich selbst führt</translation>
    </message>
    <message>
      <source>it is a raw camera file or holds no plain picture first (TIFF photometric {0})</source>
      <translation>das ist eine Rohdatei einer Kamera oder enthält zuerst kein schlichtes Bild (TIFF photometric {0})</translation>
    </message>
    <message>
      <source>it is no Ed25519 key</source>
      <translation>das ist kein Ed25519-Schlüssel</translation>
    </message>
    <message>
      <source>it is no ordinary file</source>
      <translation>das ist keine gewöhnliche Datei</translation>
    </message>
    <message>
      <source>it is not there</source>
      <translation>es ist nicht da</translation>
    </message>
    <message>
      <source>it may ask {0}</source>
      <translation>sie kann fragen nach: {0}</translation>
    </message>
    <message>
      <source>its SHA-256 was changed</source>
      <translation>der SHA-256 wurde verändert</translation>
    </message>
    <message>
      <source>its bytes are damaged ({0})</source>
      <translation>die Bytes sind beschädigt ({0})</translation>
    </message>
    <message>
      <source>its data cannot be decoded</source>
      <translation>die Daten können nicht dekodiert werden</translation>
    </message>
    <message>
      <source>its data end after row {0} of {1}</source>
      <translation>die Daten enden nach Zeile {0} von {1}</translation>
    </message>
    <message>
      <source>its data end before its last rows</source>
      <translation>die Daten enden vor den letzten Zeilen</translation>
    </message>
    <message>
      <source>its file cannot be read ({0})</source>
      <translation>die Datei kann nicht gelesen werden ({0})</translation>
    </message>
    <message>
      <source>its file differs from what was sealed</source>
      <translation>seine Datei weicht von der versiegelten ab</translation>
    </message>
    <message>
      <source>its file is not the one that was taken in</source>
      <translation>seine Datei ist nicht die aufgenommene</translation>
    </message>
    <message>
      <source>its file or its rows are not in the database</source>
      <translation>seine Datei oder seine Zeilen sind nicht in der Datenbank</translation>
    </message>
    <message>
      <source>its file {0!s}… {1}</source>
      <translation>Datei {0!s}…: {1}</translation>
    </message>
    <message>
      <source>its frame header is too short</source>
      <translation>der Bildkopf ist zu kurz</translation>
    </message>
    <message>
      <source>its header is no WebP header</source>
      <translation>der Kopf ist kein WebP-Kopf</translation>
    </message>
    <message>
      <source>its header is too short</source>
      <translation>der Kopf ist zu kurz</translation>
    </message>
    <message>
      <source>its header says {0} x {1} px, its data {2} x {3}</source>
      <translation>der Kopf sagt {0} × {1} px, die Daten {2} × {3}</translation>
    </message>
    <message>
      <source>its keys stand below its name in brackets</source>
      <translation>seine Schlüssel stehen unter seinem Namen in Klammern</translation>
    </message>
    <message>
      <source>its numbers ({0} bits, TIFF sample format {1}) have no plain meaning as a photo</source>
      <translation>seine Zahlen ({0} Bit, TIFF sample format {1}) haben als Foto keinen schlichten Sinn</translation>
    </message>
    <message>
      <source>its own check says: {0}</source>
      <translation>die eigene Prüfung der Datenbank meldet: {0}</translation>
    </message>
    <message>
      <source>its place cannot be taken out</source>
      <translation>der Aufnahmeort kann nicht herausgenommen werden</translation>
    </message>
    <message>
      <source>its row tells another size</source>
      <translation>seine Zeile nennt eine andere Größe</translation>
    </message>
    <message>
      <source>its sides cross or touch</source>
      <translation>ihre Seiten kreuzen oder berühren sich</translation>
    </message>
    <message>
      <source>its strips do not add up</source>
      <translation>die Streifen ergeben nicht das Ganze</translation>
    </message>
    <message>
      <source>its version none is older than {0}</source>
      <translation>seine Version (keine) ist älter als {0}</translation>
    </message>
    <message>
      <source>its version {0} is newer than {1}</source>
      <translation>seine Version {0} ist neuer als {1}</translation>
    </message>
    <message>
      <source>its version {0} is older than {1}</source>
      <translation>seine Version {0} ist älter als {1}</translation>
    </message>
    <message>
      <source>its {0} channels are not read</source>
      <translation>seine {0} Kanäle werden nicht gelesen</translation>
    </message>
    <message>
      <source>key {0}</source>
      <translation>Schlüssel {0}</translation>
    </message>
    <message>
      <source>lack of fusion</source>
      <translation>Bindefehler</translation>
    </message>
    <message>
      <source>lack of inter-run fusion</source>
      <translation>Lagenbindefehler</translation>
    </message>
    <message>
      <source>lack of penetration</source>
      <translation>ungenügende Durchschweißung</translation>
    </message>
    <message>
      <source>lack of root fusion</source>
      <translation>Wurzelbindefehler</translation>
    </message>
    <message>
      <source>lack of side wall fusion</source>
      <translation>Flankenbindefehler</translation>
    </message>
    <message>
      <source>larger</source>
      <translation>größer</translation>
    </message>
    <message>
      <source>larger cells</source>
      <translation>größere Zellen</translation>
    </message>
    <message>
      <source>largest size for the class</source>
      <translation>größte Größe für die Klasse</translation>
    </message>
    <message>
      <source>later</source>
      <translation>späteres</translation>
    </message>
    <message>
      <source>lay it on the pipe</source>
      <translation>auf das Rohr legen</translation>
    </message>
    <message>
      <source>lay the card beside the indication, and let the edge attract an outline drawn by hand: {0} of it is the points</source>
      <translation>die Karte neben die Anzeige legen und von Hand gezeichnete Umrisse an den Rand ziehen lassen: {0} davon sind die Punkte</translation>
    </message>
    <message>
      <source>lay the card beside the indications, or a rule whose graduations can be read: {0} of it is a tilt that the reference does not tell</source>
      <translation>die Karte neben die Anzeigen legen oder einen Maßstab mit lesbarer Teilung: {0} davon ist eine Neigung, die die Referenz nicht verrät</translation>
    </message>
    <message>
      <source>lay the card flat and uncovered, or pick a rectangle by hand</source>
      <translation>die Karte flach und unverdeckt legen oder ein Rechteck von Hand setzen</translation>
    </message>
    <message>
      <source>lay the card flat, unshaded and whole in the picture, or pick a rectangle or a line of known length</source>
      <translation>die Karte flach, unbeschattet und ganz ins Bild legen oder ein Rechteck oder eine Linie bekannter Länge setzen</translation>
    </message>
    <message>
      <source>lay the card on the pipe and give the line where it touches, or use the photo as the camera wrote it: {0} of it is how far the pipe bulges towards the camera</source>
      <translation>die Karte auf das Rohr legen und die Berührungslinie angeben oder das Foto so verwenden, wie die Kamera es schrieb: {0} davon ist, wie weit sich das Rohr zur Kamera wölbt</translation>
    </message>
    <message>
      <source>lay the pattern flat, on glass or a plate, and use one camera at one zoom</source>
      <translation>das Muster flach legen, auf Glas oder eine Platte, und eine Kamera mit einem Zoom verwenden</translation>
    </message>
    <message>
      <source>lay the reference flat and uncovered: {0} of it is the scale's points contradicting each other</source>
      <translation>die Referenz flach und unverdeckt legen: {0} davon ist der Widerspruch zwischen den Punkten des Maßstabs</translation>
    </message>
    <message>
      <source>lay the reference on the pipe and pick where it touches; leave out one that lies beside the pipe, and give the pipe's two edges and its outside diameter</source>
      <translation>die Referenz auf das Rohr legen und setzen, wo sie es berührt; eine, die neben dem Rohr liegt, weglassen und die beiden Kanten und den Außendurchmesser des Rohrs angeben</translation>
    </message>
    <message>
      <source>lay the reference on the pipe beside the indication, and pick with care where it touches: {0} of it is that line</source>
      <translation>die Referenz neben der Anzeige auf das Rohr legen und sorgfältig setzen, wo sie es berührt: {0} davon ist diese Linie</translation>
    </message>
    <message>
      <source>lay the rule along the pipe, on its crown</source>
      <translation>den Maßstab längs auf den Scheitel des Rohrs legen</translation>
    </message>
    <message>
      <source>least distance from an edge for the class</source>
      <translation>kleinster Abstand von einer Kante für die Klasse</translation>
    </message>
    <message>
      <source>least separation for the class</source>
      <translation>kleinster Abstand untereinander für die Klasse</translation>
    </message>
    <message>
      <source>leave it out</source>
      <translation>weglassen</translation>
    </message>
    <message>
      <source>leave one of the two</source>
      <translation>eines von beiden belassen</translation>
    </message>
    <message>
      <source>leave one that no other rule takes</source>
      <translation>eine belassen, die keine andere Regel verknüpft</translation>
    </message>
    <message>
      <source>leave out one of them, or give each its own minutes</source>
      <translation>eines davon weglassen oder jedem seine eigenen Minuten geben</translation>
    </message>
    <message>
      <source>leave the camera's profile out</source>
      <translation>Kameraprofil nicht verwenden</translation>
    </message>
    <message>
      <source>leave the comma out, or write a point or one place more or less</source>
      <translation>ohne Komma schreiben, oder mit Punkt oder einer Stelle mehr oder weniger</translation>
    </message>
    <message>
      <source>leave the unit out</source>
      <translation>die Einheit weglassen</translation>
    </message>
    <message>
      <source>left open</source>
      <translation>offen gelassen</translation>
    </message>
    <message>
      <source>left to the inspector</source>
      <translation>dem Prüfer überlassen</translation>
    </message>
    <message>
      <source>length</source>
      <translation>Länge</translation>
    </message>
    <message>
      <source>length end to end</source>
      <translation>Länge von Ende zu Ende</translation>
    </message>
    <message>
      <source>length of the weld</source>
      <translation>Länge der Naht</translation>
    </message>
    <message>
      <source>lengths of {0} that add up to {1} of the weld's length</source>
      <translation>Längen von {0}, die zusammen {1} der Nahtlänge sind</translation>
    </message>
    <message>
      <source>less than 0.1 %</source>
      <translation>weniger als 0,1 %</translation>
    </message>
    <message>
      <source>less than {0}</source>
      <translation>weniger als {0}</translation>
    </message>
    <message>
      <source>let pg_dump copy the database, and then copy the photo store</source>
      <translation>die Datenbank von pg_dump kopieren lassen und danach den Fotospeicher kopieren</translation>
    </message>
    <message>
      <source>let the folder's permissions decide, or keep the archive on PostgreSQL</source>
      <translation>die Rechte des Ordners entscheiden lassen oder das Archiv in PostgreSQL führen</translation>
    </message>
    <message>
      <source>let two operators measure at least, one of them twice</source>
      <translation>mindestens zwei Prüfer messen lassen, einen davon zweimal</translation>
    </message>
    <message>
      <source>limits of the process</source>
      <translation>Grenzen des Verfahrens</translation>
    </message>
    <message>
      <source>line</source>
      <translation>Linie</translation>
    </message>
    <message>
      <source>line {0} beside the photos is {1}</source>
      <translation>Zeile {0} neben den Fotos ist {1}</translation>
    </message>
    <message>
      <source>line {0} does not fit the chain</source>
      <translation>Zeile {0} passt nicht zur Kette</translation>
    </message>
    <message>
      <source>line {0} is not the one that was written</source>
      <translation>Zeile {0} ist nicht die geschriebene</translation>
    </message>
    <message>
      <source>linear</source>
      <translation>linienartig</translation>
    </message>
    <message>
      <source>linear indication {0}</source>
      <translation>linienartige Anzeige {0}</translation>
    </message>
    <message>
      <source>linear indications</source>
      <translation>linienartige Anzeigen</translation>
    </message>
    <message>
      <source>linear porosity</source>
      <translation>Porenzeile</translation>
    </message>
    <message>
      <source>lines must be a list</source>
      <translation>lines muss eine Liste sein</translation>
    </message>
    <message>
      <source>lines on the part</source>
      <translation>Linien am Teil</translation>
    </message>
    <message>
      <source>link to the test before</source>
      <translation>Verweis auf die Prüfung davor</translation>
    </message>
    <message>
      <source>list rules side by side</source>
      <translation>Regeln nebeneinander aufzählen</translation>
    </message>
    <message>
      <source>list the thinnest band first</source>
      <translation>die dünnste Stufe zuerst aufzählen</translation>
    </message>
    <message>
      <source>localized porosity</source>
      <translation>örtlich begrenzte Porosität</translation>
    </message>
    <message>
      <source>long</source>
      <translation>lang</translation>
    </message>
    <message>
      <source>longer by more than the combined uncertainty</source>
      <translation>länger um mehr als die gemeinsame Unsicherheit</translation>
    </message>
    <message>
      <source>longer than {0}</source>
      <translation>länger als {0}</translation>
    </message>
    <message>
      <source>longer, but the photo before may not show all of it</source>
      <translation>länger, aber das Foto davor zeigt vielleicht nicht alles davon</translation>
    </message>
    <message>
      <source>longitudinal crack</source>
      <translation>Längsriss</translation>
    </message>
    <message>
      <source>look at both; what is not signed is replaced with --replaces and that hash ({0})</source>
      <translation>beide ansehen; was nicht unterschrieben ist, wird mit --replaces und diesem Hash ersetzt ({0})</translation>
    </message>
    <message>
      <source>make room</source>
      <translation>schaffen Sie Platz</translation>
    </message>
    <message>
      <source>make room there, or set PTMARK_HOME to a folder that can be written to</source>
      <translation>dort Platz schaffen oder PTMARK_HOME auf einen beschreibbaren Ordner setzen</translation>
    </message>
    <message>
      <source>make room, or choose another folder; the last copy there stands</source>
      <translation>Platz schaffen oder einen anderen Ordner wählen; die letzte Kopie dort bleibt stehen</translation>
    </message>
    <message>
      <source>make room; what was kept before stands</source>
      <translation>Platz schaffen; was aufbewahrt war, bleibt</translation>
    </message>
    <message>
      <source>make the area smaller or the longest side longer</source>
      <translation>die Fläche kleiner oder die längere Seite länger machen</translation>
    </message>
    <message>
      <source>measure every photo of the set before signing, or return the record</source>
      <translation>vor dem Unterschreiben jedes Foto der Gruppe messen, oder das Protokoll zurückgeben</translation>
    </message>
    <message>
      <source>measure first, or return the record</source>
      <translation>erst messen oder das Protokoll zurückgeben</translation>
    </message>
    <message>
      <source>measure reference and outside diameter with callipers: {0} of it is their size</source>
      <translation>Referenz und Außendurchmesser mit dem Messschieber messen: {0} davon ist deren Größe</translation>
    </message>
    <message>
      <source>measure the card's check length with callipers: {0} of it is the card's own size</source>
      <translation>die Prüflänge der Karte mit dem Messschieber messen: {0} davon ist die Größe der Karte selbst</translation>
    </message>
    <message>
      <source>measure the check length again, in mm</source>
      <translation>die Prüflänge noch einmal messen, in mm</translation>
    </message>
    <message>
      <source>measure the outside diameter with callipers: {0} of it is the diameter</source>
      <translation>den Außendurchmesser mit dem Messschieber messen: {0} davon ist der Durchmesser</translation>
    </message>
    <message>
      <source>measure the reference with callipers, or take a longer one: {0} of it is the reference's own size</source>
      <translation>die Referenz mit dem Messschieber messen oder eine längere nehmen: {0} davon ist die Größe der Referenz selbst</translation>
    </message>
    <message>
      <source>memory</source>
      <translation>aus dem Gedächtnis</translation>
    </message>
    <message>
      <source>mend its folder</source>
      <translation>seinen Ordner in Ordnung bringen</translation>
    </message>
    <message>
      <source>mend them first; each says how</source>
      <translation>erst beheben; jeder sagt, wie</translation>
    </message>
    <message>
      <source>metallic inclusion</source>
      <translation>metallischer Einschluss</translation>
    </message>
    <message>
      <source>microcrack</source>
      <translation>Mikroriss</translation>
    </message>
    <message>
      <source>minutes run from 0 to 1440</source>
      <translation>Minuten laufen von 0 bis 1440</translation>
    </message>
    <message>
      <source>missing</source>
      <translation>fehlt</translation>
    </message>
    <message>
      <source>more than 99.9 %</source>
      <translation>mehr als 99,9 %</translation>
    </message>
    <message>
      <source>more than two scale cards: set {0} not used. Leave two in the picture</source>
      <translation>mehr als zwei Maßstabskarten: Satz {0} nicht verwendet. Zwei im Bild lassen</translation>
    </message>
    <message>
      <source>more than {0}</source>
      <translation>mehr als {0}</translation>
    </message>
    <message>
      <source>more than {0} rules inside each other</source>
      <translation>mehr als {0} Regeln ineinander</translation>
    </message>
    <message>
      <source>must be [[rule]] tables</source>
      <translation>müssen Tabellen [[rule]] sein</translation>
    </message>
    <message>
      <source>must be a list of 1 to {0} tables</source>
      <translation>muss eine Liste von 1 bis {0} Tabellen sein</translation>
    </message>
    <message>
      <source>must be a list of texts, got {0}</source>
      <translation>muss eine Liste von Texten sein, nicht {0}</translation>
    </message>
    <message>
      <source>must be a table</source>
      <translation>muss eine Tabelle sein</translation>
    </message>
    <message>
      <source>must be a whole number of indications, got {0}</source>
      <translation>muss eine ganze Zahl von Anzeigen sein, nicht {0}</translation>
    </message>
    <message>
      <source>must be above that of the band before</source>
      <translation>muss über dem der Stufe davor liegen</translation>
    </message>
    <message>
      <source>must be above zero, got {0}</source>
      <translation>muss über null liegen, nicht {0}</translation>
    </message>
    <message>
      <source>must be text with its unit, got {0}</source>
      <translation>muss Text mit Einheit sein, nicht {0}</translation>
    </message>
    <message>
      <source>must be text, got {0}</source>
      <translation>muss Text sein, nicht {0}</translation>
    </message>
    <message>
      <source>must hold {0} amounts, got {1}</source>
      <translation>muss {0} Größen enthalten, nicht {1}</translation>
    </message>
    <message>
      <source>must list at least one ISO 6520-1 name or number</source>
      <translation>muss mindestens einen Namen oder eine Nummer der ISO 6520-1 aufzählen</translation>
    </message>
    <message>
      <source>must list the id of at least one other rule</source>
      <translation>muss die Kennung mindestens einer anderen Regel aufzählen</translation>
    </message>
    <message>
      <source>name a rule of this file</source>
      <translation>eine Regel dieser Datei nennen</translation>
    </message>
    <message>
      <source>name an empty one with --database, then put it in the other's place</source>
      <translation>mit --database eine leere nennen und sie dann an die Stelle der anderen setzen</translation>
    </message>
    <message>
      <source>name it in brackets</source>
      <translation>ihn in Klammern nennen</translation>
    </message>
    <message>
      <source>name it in the rules of an all-of, any-of or unless</source>
      <translation>sie in den Regeln von all-of, any-of oder unless nennen</translation>
    </message>
    <message>
      <source>name its folder, or make a lost database again: ptmark archive rebuild</source>
      <translation>seinen Ordner nennen oder eine verlorene Datenbank neu anlegen: ptmark archive rebuild</translation>
    </message>
    <message>
      <source>name marks</source>
      <translation>Marken nennen</translation>
    </message>
    <message>
      <source>name the folder that holds the photo as it was inspected</source>
      <translation>den Ordner nennen, der das Foto enthält, wie es geprüft wurde</translation>
    </message>
    <message>
      <source>name the photos of the grid</source>
      <translation>die Fotos des Rasters nennen</translation>
    </message>
    <message>
      <source>name the reviewer and one of: {0}</source>
      <translation>den Gegenprüfer und eines davon nennen: {0}</translation>
    </message>
    <message>
      <source>name, logo and lines must be texts</source>
      <translation>name, logo und lines müssen Texte sein</translation>
    </message>
    <message>
      <source>named ISO 6520-1 {0}</source>
      <translation>benannt nach ISO 6520-1 {0}</translation>
    </message>
    <message>
      <source>named {0}</source>
      <translation>benannt {0}</translation>
    </message>
    <message>
      <source>named {0} longer than {1}</source>
      <translation>benannt {0}, länger als {1}</translation>
    </message>
    <message>
      <source>names no database that can be reached</source>
      <translation>nennt keine Datenbank, die erreichbar ist</translation>
    </message>
    <message>
      <source>names or numbers of ISO 6520-1, with commas between them</source>
      <translation>Namen oder Nummern der ISO 6520-1, mit Kommas dazwischen</translation>
    </message>
    <message>
      <source>needs photo</source>
      <translation>braucht Foto</translation>
    </message>
    <message>
      <source>neither a review nor a photo that two examiners measured, one of them twice</source>
      <translation>weder eine Gegenprüfung noch ein Foto, das zwei Prüfer gemessen haben, einer davon zweimal</translation>
    </message>
    <message>
      <source>neither reference tells how the surface leans</source>
      <translation>keine der Referenzen sagt, wie die Oberfläche geneigt ist</translation>
    </message>
    <message>
      <source>new photo asked</source>
      <translation>neues Foto verlangt</translation>
    </message>
    <message>
      <source>no XYZ type</source>
      <translation>keine Art XYZ</translation>
    </message>
    <message>
      <source>no camera profile '{0!s}'</source>
      <translation>kein Kameraprofil „{0!s}“</translation>
    </message>
    <message>
      <source>no change beyond the combined uncertainty</source>
      <translation>keine Änderung über die gemeinsame Unsicherheit hinaus</translation>
    </message>
    <message>
      <source>no clear edge in the photo at the picks on the {0} edge: they count as they were picked. A background that differs from the pipe helps</source>
      <translation>keine klare Kante im Foto bei den Punkten: {0} Kante; sie zählen, wie sie gesetzt wurden. Ein Hintergrund, der sich vom Rohr abhebt, hilft</translation>
    </message>
    <message>
      <source>no curve type</source>
      <translation>keine Art curve</translation>
    </message>
    <message>
      <source>no edge</source>
      <translation>kein Rand</translation>
    </message>
    <message>
      <source>no edge: a glow as bright as a faint indication, reclean and repeat</source>
      <translation>kein Rand: ein Leuchten so hell wie eine schwache Anzeige, neu reinigen und wiederholen</translation>
    </message>
    <message>
      <source>no edge: a glow that fades away, remove the excess and repeat if in doubt</source>
      <translation>kein Rand: ein Leuchten, das ausläuft; den Überschuss entfernen und im Zweifel wiederholen</translation>
    </message>
    <message>
      <source>no edge: a pink haze as dense as an indication, reclean and repeat</source>
      <translation>kein Rand: ein rosa Schleier so dicht wie eine Anzeige, neu reinigen und wiederholen</translation>
    </message>
    <message>
      <source>no edge: a pink haze that fades away, reclean and repeat if in doubt</source>
      <translation>kein Rand: ein rosa Schleier, der ausläuft; neu reinigen und im Zweifel wiederholen</translation>
    </message>
    <message>
      <source>no edge: it fades over a length like its own size</source>
      <translation>kein Rand: Es läuft über eine Strecke aus, die so groß ist wie es selbst</translation>
    </message>
    <message>
      <source>no examiner traced the indications of one photo again</source>
      <translation>kein Prüfer hat die Anzeigen eines Fotos noch einmal gezeichnet</translation>
    </message>
    <message>
      <source>no file in {0} has SHA-256 {1}</source>
      <translation>keine Datei in {0} hat den SHA-256 {1}</translation>
    </message>
    <message>
      <source>no graduations could be read along the line: its length is taken as typed. Check it against the numerals; pick two strokes of a rule where it is sharp, evenly lit and not worn, or lay a card beside it</source>
      <translation>längs der Linie war keine Teilung zu lesen: Ihre Länge gilt wie eingegeben. Sie mit der Bezifferung vergleichen; zwei Striche eines Maßstabs setzen, wo er scharf, gleichmäßig beleuchtet und nicht abgenutzt ist, oder eine Karte daneben legen</translation>
    </message>
    <message>
      <source>no group of {0} with gaps of {1}</source>
      <translation>keine Gruppe von {0} mit Abständen von {1}</translation>
    </message>
    <message>
      <source>no indication</source>
      <translation>keine Anzeige</translation>
    </message>
    <message>
      <source>no indication bears one letter in two photos of different times</source>
      <translation>keine Anzeige trägt in zwei Fotos verschiedener Zeiten denselben Buchstaben</translation>
    </message>
    <message>
      <source>no known parametric curve</source>
      <translation>keine bekannte parametrische Kurve</translation>
    </message>
    <message>
      <source>no larger</source>
      <translation>nicht größer</translation>
    </message>
    <message>
      <source>no limit</source>
      <translation>keine Grenze</translation>
    </message>
    <message>
      <source>no limit is negative</source>
      <translation>keine Grenze ist negativ</translation>
    </message>
    <message>
      <source>no line of the log lies beside the photos, where the database has some</source>
      <translation>bei den Fotos liegt keine Zeile des Verlaufs, die Datenbank hat aber welche</translation>
    </message>
    <message>
      <source>no linear indication</source>
      <translation>keine linienartige Anzeige</translation>
    </message>
    <message>
      <source>no log lies beside the photos</source>
      <translation>neben den Fotos liegt kein Logbuch</translation>
    </message>
    <message>
      <source>no ordinary file lies there</source>
      <translation>dort liegt keine gewöhnliche Datei</translation>
    </message>
    <message>
      <source>no other photo fits it: {0}</source>
      <translation>kein anderes Foto passt dazu: {0}</translation>
    </message>
    <message>
      <source>no other photo shows an indication {0}</source>
      <translation>kein anderes Foto zeigt eine Anzeige {0}</translation>
    </message>
    <message>
      <source>no paper '{0!s}'</source>
      <translation>kein Papier „{0!s}“</translation>
    </message>
    <message>
      <source>no photo fits {0}: {1}</source>
      <translation>kein Foto passt zu {0}: {1}</translation>
    </message>
    <message>
      <source>no photo is taken aslant, so the focal length stays open</source>
      <translation>kein Foto ist schräg aufgenommen, so bleibt die Brennweite offen</translation>
    </message>
    <message>
      <source>no photo was taken within {0} ({1}); take one {2}.</source>
      <translation>kein Foto wurde innerhalb {0} aufgenommen ({1}); ein {2} aufnehmen.</translation>
    </message>
    <message>
      <source>no photos</source>
      <translation>keine Fotos</translation>
    </message>
    <message>
      <source>no place of the surface is alike in both</source>
      <translation>keine Stelle der Oberfläche ist in beiden gleich</translation>
    </message>
    <message>
      <source>no record needs it</source>
      <translation>kein Protokoll braucht es</translation>
    </message>
    <message>
      <source>no rectangle with sides up to {0} has that area</source>
      <translation>kein Rechteck mit Seiten bis {0} hat diese Fläche</translation>
    </message>
    <message>
      <source>no relevant</source>
      <translation>keine relevante</translation>
    </message>
    <message>
      <source>no relevant indication</source>
      <translation>keine relevante Anzeige</translation>
    </message>
    <message>
      <source>no relevant linear indication</source>
      <translation>keine relevante linienartige Anzeige</translation>
    </message>
    <message>
      <source>no relevant rounded indication</source>
      <translation>keine relevante nicht linienartige Anzeige</translation>
    </message>
    <message>
      <source>no rounded indication</source>
      <translation>keine nicht linienartige Anzeige</translation>
    </message>
    <message>
      <source>no rule is left that judges</source>
      <translation>keine Regel bleibt übrig, die bewertet</translation>
    </message>
    <message>
      <source>no scale card found</source>
      <translation>keine Maßstabskarte gefunden</translation>
    </message>
    <message>
      <source>no search is saved as '{0!s}'</source>
      <translation>keine Suche ist als „{0!s}“ gespeichert</translation>
    </message>
    <message>
      <source>no set {0}</source>
      <translation>kein Satz {0}</translation>
    </message>
    <message>
      <source>no store can be reached: {0}</source>
      <translation>kein Speicher zu erreichen: {0}</translation>
    </message>
    <message>
      <source>no time stamp came ({0})</source>
      <translation>kein Zeitstempel kam ({0})</translation>
    </message>
    <message>
      <source>no unit</source>
      <translation>keine Einheit</translation>
    </message>
    <message>
      <source>no visible piping porosity</source>
      <translation>keine sichtbaren Schlauchporen</translation>
    </message>
    <message>
      <source>no {0}indication{1}</source>
      <translation>keine {0}Anzeige{1}</translation>
    </message>
    <message>
      <source>non-relevant</source>
      <translation>nicht relevant</translation>
    </message>
    <message>
      <source>none</source>
      <translation>keine</translation>
    </message>
    <message>
      <source>none chosen</source>
      <translation>keine gewählt</translation>
    </message>
    <message>
      <source>none in the code; common practice</source>
      <translation>keiner im Regelwerk; übliche Praxis</translation>
    </message>
    <message>
      <source>none set</source>
      <translation>keine gesetzt</translation>
    </message>
    <message>
      <source>not a JSON object</source>
      <translation>kein JSON-Objekt</translation>
    </message>
    <message>
      <source>not both photos show the card</source>
      <translation>nicht beide Fotos zeigen die Karte</translation>
    </message>
    <message>
      <source>not decided yet</source>
      <translation>noch nicht entschieden</translation>
    </message>
    <message>
      <source>not dye-coloured</source>
      <translation>nicht farbstoffrot</translation>
    </message>
    <message>
      <source>not dye-coloured: darker than its surroundings, hardly redder</source>
      <translation>nicht farbstoffrot: dunkler als die Umgebung, kaum röter</translation>
    </message>
    <message>
      <source>not dye-coloured: it darkens red as well, like ink, scale or a shadow</source>
      <translation>nicht farbstoffrot: Es dunkelt auch das Rot ab, wie Tinte, Zunder oder ein Schatten</translation>
    </message>
    <message>
      <source>not dye-coloured: it leaves blue, like violet ink</source>
      <translation>nicht farbstoffrot: Es lässt Blau durch, wie violette Tinte</translation>
    </message>
    <message>
      <source>not dye-coloured: redder than its surroundings, hardly darker</source>
      <translation>nicht farbstoffrot: röter als die Umgebung, kaum dunkler</translation>
    </message>
    <message>
      <source>not dye-coloured: reddish but dull, like dark ink, or dye in a photo of dull colours</source>
      <translation>nicht farbstoffrot: rötlich, aber matt, wie dunkle Tinte oder wie Farbstoff in einem Foto matter Farben</translation>
    </message>
    <message>
      <source>not dye-coloured: yellow or brown, like rust or heat tint</source>
      <translation>nicht farbstoffrot: gelb oder braun, wie Rost oder Anlauffarben</translation>
    </message>
    <message>
      <source>not given</source>
      <translation>nicht angegeben</translation>
    </message>
    <message>
      <source>not green-yellow, as most that shines here: set the white balance, or look at it</source>
      <translation>nicht grüngelb, wie das meiste, was hier leuchtet: den Weißabgleich einstellen oder nachsehen</translation>
    </message>
    <message>
      <source>not green-yellow: bluish or white, like lint, paper or a reflection</source>
      <translation>nicht grüngelb: bläulich oder weiß, wie Fasern, Papier oder ein Reflex</translation>
    </message>
    <message>
      <source>not green-yellow: orange, pink or red, like ink</source>
      <translation>nicht grüngelb: orange, rosa oder rot, wie Tinte</translation>
    </message>
    <message>
      <source>not judged</source>
      <translation>nicht bewertet</translation>
    </message>
    <message>
      <source>not looked at closely: the photo has {0} redder places</source>
      <translation>nicht genau angesehen: das Foto hat {0} rötere Stellen</translation>
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
      <source>not seen; clause numbers as cited by secondary sources</source>
      <translation>nicht gesehen; Abschnittsnummern wie von Quellen aus zweiter Hand genannt</translation>
    </message>
    <message>
      <source>not signed</source>
      <translation>nicht unterschrieben</translation>
    </message>
    <message>
      <source>nothing is less than 0, so it could never be hit</source>
      <translation>nichts ist weniger als 0, sie könnte also nie treffen</translation>
    </message>
    <message>
      <source>nothing of the photo of {0} x {1} px lies in it</source>
      <translation>vom Foto mit {0} x {1} px liegt nichts darin</translation>
    </message>
    <message>
      <source>nothing was called there</source>
      <translation>dort wurde nichts angezeigt</translation>
    </message>
    <message>
      <source>nothing was measured, so there is nothing to sign</source>
      <translation>nichts wurde gemessen, also ist nichts zu unterschreiben</translation>
    </message>
    <message>
      <source>number</source>
      <translation>Nummer</translation>
    </message>
    <message>
      <source>number of parts: {0}; length from end to end of all</source>
      <translation>Anzahl der Teile: {0}; Länge von Ende zu Ende über alle</translation>
    </message>
    <message>
      <source>number on the reference area for the class</source>
      <translation>Anzahl auf der Bezugsfläche für die Klasse</translation>
    </message>
    <message>
      <source>of one and the same indication</source>
      <translation>an ein und derselben Anzeige</translation>
    </message>
    <message>
      <source>of the weld's length</source>
      <translation>der Nahtlänge</translation>
    </message>
    <message>
      <source>on a frame of {0} by {1} {2}, at its worst place and turn</source>
      <translation>auf einem Rahmen von {0} × {1} {2}, in der ungünstigsten Lage und Drehung</translation>
    </message>
    <message>
      <source>on a pipe</source>
      <translation>auf einem Rohr</translation>
    </message>
    <message>
      <source>one line fixes the scale but not the tilt, which is taken as less than 20 degrees: lengths away from it, and lengths along the tilt, are less sure. Take the photo from straight above, or lay a card or a rectangle beside the indications</source>
      <translation>eine Linie legt den Maßstab fest, nicht aber die Neigung, die unter 20 Grad angenommen wird: Längen abseits von ihr und Längen in Richtung der Neigung sind weniger sicher. Das Foto gerade von oben aufnehmen oder eine Karte oder ein Rechteck neben die Anzeigen legen</translation>
    </message>
    <message>
      <source>one line in your own words</source>
      <translation>eine Zeile in eigenen Worten</translation>
    </message>
    <message>
      <source>one of</source>
      <translation>eine aus</translation>
    </message>
    <message>
      <source>one of its parts has no length</source>
      <translation>einer ihrer Teile hat keine Länge</translation>
    </message>
    <message>
      <source>one of them lies off the surface or its length is wrong: lay both flat on the surface, or give how far above it one lies (offset), or use one of them only</source>
      <translation>eine liegt nicht auf der Oberfläche, oder ihre Länge ist falsch: beide flach auf die Oberfläche legen, angeben, wie hoch eine darüber liegt (Versatz), oder nur eine verwenden</translation>
    </message>
    <message>
      <source>one of {0}</source>
      <translation>eine aus {0}</translation>
    </message>
    <message>
      <source>one photo is no series</source>
      <translation>ein Foto allein ist keine Reihe</translation>
    </message>
    <message>
      <source>only SQLite is copied here</source>
      <translation>hier wird nur SQLite kopiert</translation>
    </message>
    <message>
      <source>only the worst reading hits it</source>
      <translation>nur die ungünstigste Lesart trifft</translation>
    </message>
    <message>
      <source>only {0} places of the surface are alike in both</source>
      <translation>nur {0} Stellen der Oberfläche sind in beiden gleich</translation>
    </message>
    <message>
      <source>open a photo first</source>
      <translation>zuerst ein Foto öffnen</translation>
    </message>
    <message>
      <source>open another one instead</source>
      <translation>stattdessen ein anderes öffnen</translation>
    </message>
    <message>
      <source>open the record that it should lead to</source>
      <translation>das Protokoll öffnen, zu dem sie führen soll</translation>
    </message>
    <message>
      <source>operator '{0!s}' makes no sense here</source>
      <translation>der Operator „{0!s}“ hat hier keinen Sinn</translation>
    </message>
    <message>
      <source>or</source>
      <translation>oder</translation>
    </message>
    <message>
      <source>or more indications</source>
      <translation>oder mehr Anzeigen</translation>
    </message>
    <message>
      <source>or more linear indications</source>
      <translation>oder mehr linienartige Anzeigen</translation>
    </message>
    <message>
      <source>or more rounded indications</source>
      <translation>oder mehr nicht linienartige Anzeigen</translation>
    </message>
    <message>
      <source>or than {0} % of the thickness if less</source>
      <translation>oder als {0} % der Dicke, falls das weniger ist</translation>
    </message>
    <message>
      <source>order the photos</source>
      <translation>Fotos ordnen</translation>
    </message>
    <message>
      <source>others on this machine may read the signing key</source>
      <translation>andere auf diesem Rechner können den Signierschlüssel lesen</translation>
    </message>
    <message>
      <source>outside the level</source>
      <translation>außerhalb der Stufe</translation>
    </message>
    <message>
      <source>outside the list of 344.4.2</source>
      <translation>außerhalb der Liste von 344.4.2</translation>
    </message>
    <message>
      <source>outside the list of 8-4</source>
      <translation>außerhalb der Liste von 8-4</translation>
    </message>
    <message>
      <source>outside the porosity rules</source>
      <translation>außerhalb der Porenregeln</translation>
    </message>
    <message>
      <source>outside the table</source>
      <translation>außerhalb der Tabelle</translation>
    </message>
    <message>
      <source>overlap</source>
      <translation>Schweißgutüberlauf</translation>
    </message>
    <message>
      <source>overrides '{0!s}' twice</source>
      <translation>überschreibt „{0!s}“ zweimal</translation>
    </message>
    <message>
      <source>overrides a rule that the base does not have</source>
      <translation>überschreibt eine Regel, die die Grundlage nicht hat</translation>
    </message>
    <message>
      <source>oxide inclusion</source>
      <translation>Oxideinschluss</translation>
    </message>
    <message>
      <source>part number</source>
      <translation>Teilenummer</translation>
    </message>
    <message>
      <source>part of it is empty, as in a copy that was not finished</source>
      <translation>ein Teil davon ist leer, wie in einer Kopie, die nicht fertig wurde</translation>
    </message>
    <message>
      <source>part or delete that one first</source>
      <translation>erst jene trennen oder löschen</translation>
    </message>
    <message>
      <source>parts: {0} before, {1} after, from end to end</source>
      <translation>Teile: vorher {0}, nachher {1}, von Ende zu Ende</translation>
    </message>
    <message>
      <source>permission denied</source>
      <translation>Zugriff verweigert</translation>
    </message>
    <message>
      <source>photo {0}</source>
      <translation>Foto {0}</translation>
    </message>
    <message>
      <source>photo {0} of {1} was not measured</source>
      <translation>Foto {0} von {1} wurde nicht gemessen</translation>
    </message>
    <message>
      <source>photograph it flat and whole, sharp, from several sides</source>
      <translation>flach und ganz, scharf und von mehreren Seiten fotografieren</translation>
    </message>
    <message>
      <source>photos</source>
      <translation>Fotos</translation>
    </message>
    <message>
      <source>photos of a pipe cannot be laid over each other: that takes a plane</source>
      <translation>Fotos eines Rohrs können nicht übereinandergelegt werden: dazu braucht es eine Ebene</translation>
    </message>
    <message>
      <source>pick inside the photo</source>
      <translation>innerhalb des Fotos setzen</translation>
    </message>
    <message>
      <source>pick it again under the magnifier</source>
      <translation>unter der Lupe noch einmal setzen</translation>
    </message>
    <message>
      <source>pick the corners clockwise from the top left</source>
      <translation>die Ecken im Uhrzeigersinn von links oben an setzen</translation>
    </message>
    <message>
      <source>pick the four corners again under the magnifier: {0} of it is that they contradict each other</source>
      <translation>die vier Ecken unter der Lupe neu wählen: {0} davon ist, dass sie einander widersprechen</translation>
    </message>
    <message>
      <source>pick the points again under the magnifier, or let the edge attract the outline: {0} of it is points set by hand</source>
      <translation>die Punkte unter der Lupe noch einmal setzen oder den Umriss an den Rand ziehen lassen: {0} davon sind von Hand gesetzte Punkte</translation>
    </message>
    <message>
      <source>pick two points along the pipe, where the reference touches it</source>
      <translation>zwei Punkte längs des Rohrs setzen, wo die Referenz es berührt</translation>
    </message>
    <message>
      <source>pick two points far apart</source>
      <translation>zwei weit auseinander liegende Punkte setzen</translation>
    </message>
    <message>
      <source>pick two points far apart on each of the pipe's two outer edges</source>
      <translation>auf jeder der beiden äußeren Kanten des Rohrs zwei weit auseinander liegende Punkte setzen</translation>
    </message>
    <message>
      <source>pick your own scale reference first</source>
      <translation>erst die eigene Maßstabsreferenz setzen</translation>
    </message>
    <message>
      <source>picked marks</source>
      <translation>gesetzten Marken</translation>
    </message>
    <message>
      <source>pink haze over the developer (background {0} % of full dye)</source>
      <translation>rosa Schleier auf dem Entwickler (Untergrund {0} % der vollen Farbe)</translation>
    </message>
    <message>
      <source>pink in a dark crease that goes on beyond it: reclean, or look closely</source>
      <translation>Rosa in einer dunklen Falte, die darüber hinaus weitergeht: neu reinigen oder genau hinsehen</translation>
    </message>
    <message>
      <source>pip install 'ptmark[server]'</source>
      <translation>pip install 'ptmark[server]'</translation>
    </message>
    <message>
      <source>pipe</source>
      <translation>Rohr</translation>
    </message>
    <message>
      <source>piping porosity</source>
      <translation>Schlauchporen</translation>
    </message>
    <message>
      <source>pixels must have shape (H, W, 3) and type uint8, got {0} {1}</source>
      <translation>Pixel müssen die Form (H, W, 3) und den Typ uint8 haben, nicht {0} {1}</translation>
    </message>
    <message>
      <source>point {0}, {1} lies outside the photo of {2} x {3} px</source>
      <translation>der Punkt {0}, {1} liegt außerhalb des Fotos von {2} × {3} px</translation>
    </message>
    <message>
      <source>points are left out of each reference alone</source>
      <translation>Punkte sind in jeder Referenz für sich ausgelassen</translation>
    </message>
    <message>
      <source>poor restart</source>
      <translation>Ansatzfehler</translation>
    </message>
    <message>
      <source>pore</source>
      <translation>Pore</translation>
    </message>
    <message>
      <source>porosity</source>
      <translation>Porosität</translation>
    </message>
    <message>
      <source>porosity rules do not judge a linear indication; the inspector must say what it is</source>
      <translation>Porenregeln bewerten keine linienartige Anzeige; der Prüfer muss sagen, was sie ist</translation>
    </message>
    <message>
      <source>procedure {0}</source>
      <translation>Verfahren {0}</translation>
    </message>
    <message>
      <source>ptmark camera list</source>
      <translation>ptmark camera list</translation>
    </message>
    <message>
      <source>ptmark {0}</source>
      <translation>ptmark {0}</translation>
    </message>
    <message>
      <source>put it beside the others</source>
      <translation>es neben die anderen legen</translation>
    </message>
    <message>
      <source>put the original back</source>
      <translation>das Original zurücklegen</translation>
    </message>
    <message>
      <source>put the original photo back, or make the report without it</source>
      <translation>das Originalfoto zurücklegen oder den Bericht ohne es machen</translation>
    </message>
    <message>
      <source>radiating crack</source>
      <translation>sternförmig ausgehende Risse</translation>
    </message>
    <message>
      <source>reaches in from the edge of the photo and is wide, like a glove or a cloth</source>
      <translation>ragt vom Bildrand herein und ist breit, wie ein Handschuh oder ein Tuch</translation>
    </message>
    <message>
      <source>reason of the decision</source>
      <translation>Grund der Entscheidung</translation>
    </message>
    <message>
      <source>recalled from memory and not confirmed</source>
      <translation>aus dem Gedächtnis und nicht bestätigt</translation>
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
      <source>reference</source>
      <translation>Referenz</translation>
    </message>
    <message>
      <source>refuse it</source>
      <translation>ablehnen</translation>
    </message>
    <message>
      <source>registered by the card alone: places far from it are less sure</source>
      <translation>allein nach der Karte zur Deckung gebracht: Stellen weit von ihr sind weniger sicher</translation>
    </message>
    <message>
      <source>rejectable</source>
      <translation>nicht zulässig</translation>
    </message>
    <message>
      <source>relevant</source>
      <translation>relevant</translation>
    </message>
    <message>
      <source>remove it, and calibrate the camera again</source>
      <translation>es entfernen und die Kamera neu kalibrieren</translation>
    </message>
    <message>
      <source>remove {0}</source>
      <translation>{0} entfernen</translation>
    </message>
    <message>
      <source>repair it</source>
      <translation>es instand setzen</translation>
    </message>
    <message>
      <source>repair the archive</source>
      <translation>das Archiv instand setzen</translation>
    </message>
    <message>
      <source>repair the archive before copying it</source>
      <translation>das Archiv instand setzen, bevor es kopiert wird</translation>
    </message>
    <message>
      <source>review more</source>
      <translation>mehr gegenprüfen</translation>
    </message>
    <message>
      <source>review records, or let two examiners measure the same photos</source>
      <translation>Protokolle gegenprüfen oder zwei Prüfer dieselben Fotos messen lassen</translation>
    </message>
    <message>
      <source>reviewer</source>
      <translation>Gegenprüfer</translation>
    </message>
    <message>
      <source>revision {0}</source>
      <translation>Fassung {0}</translation>
    </message>
    <message>
      <source>revisions</source>
      <translation>Revisionen</translation>
    </message>
    <message>
      <source>rework and retest</source>
      <translation>nacharbeiten und wieder prüfen</translation>
    </message>
    <message>
      <source>root porosity</source>
      <translation>Wurzelporosität</translation>
    </message>
    <message>
      <source>rounded</source>
      <translation>nicht linienartig</translation>
    </message>
    <message>
      <source>rounded indication {0}</source>
      <translation>nicht linienartige Anzeige {0}</translation>
    </message>
    <message>
      <source>rounded indications</source>
      <translation>nicht linienartige Anzeigen</translation>
    </message>
    <message>
      <source>row {0} must be a table such as { reject = "&gt; 2 mm" }</source>
      <translation>Zeile {0} muss eine Tabelle sein wie { reject = "&gt; 2 mm" }</translation>
    </message>
    <message>
      <source>run `ptmark archive verify` once: it brings it up to date</source>
      <translation>einmal `ptmark archive verify` aufrufen: das bringt sie auf den neuen Stand</translation>
    </message>
    <message>
      <source>save it as plain text, encoded in UTF-8</source>
      <translation>als reinen Text in UTF-8 speichern</translation>
    </message>
    <message>
      <source>scale of the photo</source>
      <translation>Maßstab des Fotos</translation>
    </message>
    <message>
      <source>scene</source>
      <translation>Szene</translation>
    </message>
    <message>
      <source>seal</source>
      <translation>Siegel</translation>
    </message>
    <message>
      <source>seal holds, SHA-256 {0}</source>
      <translation>Siegel hält, SHA-256 {0}</translation>
    </message>
    <message>
      <source>searches miss words of its index</source>
      <translation>Suchen übersehen Wörter aus ihrem Verzeichnis</translation>
    </message>
    <message>
      <source>second</source>
      <translation>zweite</translation>
    </message>
    <message>
      <source>secondary</source>
      <translation>aus zweiter Hand</translation>
    </message>
    <message>
      <source>see `ptmark archive verify`</source>
      <translation>siehe `ptmark archive verify`</translation>
    </message>
    <message>
      <source>see archive find</source>
      <translation>siehe archive find</translation>
    </message>
    <message>
      <source>see archive find --list</source>
      <translation>siehe archive find --list</translation>
    </message>
    <message>
      <source>see that its folder is there, and open it again</source>
      <translation>dafür sorgen, dass der Ordner da ist, und es neu öffnen</translation>
    </message>
    <message>
      <source>see that the disk of the photos is there; else: ptmark archive repair</source>
      <translation>dafür sorgen, dass der Datenträger der Fotos da ist; sonst: ptmark archive repair</translation>
    </message>
    <message>
      <source>see that the server runs and can be reached, then try again</source>
      <translation>sehen, dass der Server läuft und erreichbar ist, dann noch einmal versuchen</translation>
    </message>
    <message>
      <source>see that the store can be reached</source>
      <translation>sorgen Sie dafür, dass der Fotospeicher erreichbar ist</translation>
    </message>
    <message>
      <source>seen only in secondary sources, not in the standard itself</source>
      <translation>nur in Quellen aus zweiter Hand gesehen, nicht in der Norm selbst</translation>
    </message>
    <message>
      <source>serial number</source>
      <translation>Seriennummer</translation>
    </message>
    <message>
      <source>set a background behind the pipe from which its edges stand out, and let the edge attract an outline drawn by hand: {0} of it is the points</source>
      <translation>einen Hintergrund hinter das Rohr stellen, von dem sich seine Kanten abheben, und von Hand gezeichnete Umrisse an den Rand ziehen lassen: {0} davon sind die Punkte</translation>
    </message>
    <message>
      <source>set as {0} without a reason, so it is judged</source>
      <translation>ohne Grund als {0} gesetzt, wird deshalb bewertet</translation>
    </message>
    <message>
      <source>set the scale</source>
      <translation>Maßstab setzen</translation>
    </message>
    <message>
      <source>set {0}</source>
      <translation>{0} gesetzt</translation>
    </message>
    <message>
      <source>sharpen the edge (focus, steady hand, even light, thinner developer): {0} of it is the edge's own width</source>
      <translation>den Rand schärfer machen (Fokus, ruhige Hand, gleichmäßiges Licht, dünnerer Entwickler): {0} davon ist die Breite des Randes selbst</translation>
    </message>
    <message>
      <source>shorter by more than the combined uncertainty</source>
      <translation>kürzer um mehr als die gemeinsame Unsicherheit</translation>
    </message>
    <message>
      <source>shrinkage cavity</source>
      <translation>Lunker</translation>
    </message>
    <message>
      <source>signed by {0}</source>
      <translation>unterschrieben von {0}</translation>
    </message>
    <message>
      <source>simple</source>
      <translation>wie gelesen</translation>
    </message>
    <message>
      <source>simple acceptance: the measured value alone is compared with the limit</source>
      <translation>einfache Annahme: Nur der Messwert wird mit der Grenze verglichen</translation>
    </message>
    <message>
      <source>size of the scale reference itself</source>
      <translation>Größe der Maßstabsreferenz selbst</translation>
    </message>
    <message>
      <source>slag inclusion</source>
      <translation>Schlackeneinschluss</translation>
    </message>
    <message>
      <source>small letters, digits, dots and hyphens; the file is called so too</source>
      <translation>kleine Buchstaben, Ziffern, Punkte und Bindestriche; so heißt auch die Datei</translation>
    </message>
    <message>
      <source>smaller</source>
      <translation>kleiner</translation>
    </message>
    <message>
      <source>smaller than {0}: go closer to judge it</source>
      <translation>kleiner als {0}: näher herangehen, um es zu beurteilen</translation>
    </message>
    <message>
      <source>smallest indication that counts, for the level</source>
      <translation>kleinste Anzeige, die zählt, für die Stufe</translation>
    </message>
    <message>
      <source>smallest size that counts, for the class</source>
      <translation>kleinste Größe, die zählt, für die Klasse</translation>
    </message>
    <message>
      <source>solid inclusion</source>
      <translation>fester Einschluss</translation>
    </message>
    <message>
      <source>something lies over the place, or it bears no developer</source>
      <translation>etwas liegt über der Stelle, oder sie trägt keinen Entwickler</translation>
    </message>
    <message>
      <source>spatter</source>
      <translation>Spritzer</translation>
    </message>
    <message>
      <source>stands in place of {0}</source>
      <translation>steht anstelle von {0}</translation>
    </message>
    <message>
      <source>stands in the database, not in the log</source>
      <translation>steht in der Datenbank, nicht im Logbuch</translation>
    </message>
    <message>
      <source>star crack</source>
      <translation>Sternriss</translation>
    </message>
    <message>
      <source>start the outline inside it</source>
      <translation>den Umriss innerhalb beginnen</translation>
    </message>
    <message>
      <source>stray arc</source>
      <translation>Zündstelle</translation>
    </message>
    <message>
      <source>strip</source>
      <translation>Streifen</translation>
    </message>
    <message>
      <source>suggest indications</source>
      <translation>Anzeigen suchen</translation>
    </message>
    <message>
      <source>summed length</source>
      <translation>Längensumme</translation>
    </message>
    <message>
      <source>surface pore</source>
      <translation>Oberflächenpore</translation>
    </message>
    <message>
      <source>take NUL characters out of its texts, and numbers or names of thousands of letters</source>
      <translation>nehmen Sie NUL-Zeichen aus seinen Texten, und Nummern oder Namen aus Tausenden von Zeichen</translation>
    </message>
    <message>
      <source>take a card, a rectangle or a graduated rule as one of the two</source>
      <translation>als eine der beiden eine Karte, ein Rechteck oder einen Maßstab mit Teilung nehmen</translation>
    </message>
    <message>
      <source>take a longer line or a closer photo</source>
      <translation>eine längere Linie oder ein näheres Foto nehmen</translation>
    </message>
    <message>
      <source>take a whole copy of it</source>
      <translation>eine ganze Kopie davon nehmen</translation>
    </message>
    <message>
      <source>take a whole copy of the record</source>
      <translation>eine ganze Kopie des Protokolls nehmen</translation>
    </message>
    <message>
      <source>take an unchanged copy</source>
      <translation>eine unveränderte Kopie nehmen</translation>
    </message>
    <message>
      <source>take another photo from that side of the pipe</source>
      <translation>ein weiteres Foto von dieser Seite des Rohrs aufnehmen</translation>
    </message>
    <message>
      <source>take both photos from much the same place, in the same light; or name four or more marks that both show, or say that the card was not moved</source>
      <translation>beide Fotos von etwa derselben Stelle und im selben Licht aufnehmen; oder vier oder mehr Marken nennen, die beide zeigen, oder sagen, dass die Karte nicht bewegt wurde</translation>
    </message>
    <message>
      <source>take brackets out</source>
      <translation>Klammern herausnehmen</translation>
    </message>
    <message>
      <source>take fewer together</source>
      <translation>weniger verknüpfen</translation>
    </message>
    <message>
      <source>take it back from the backup: ptmark archive repair --from FOLDER</source>
      <translation>aus der Sicherung zurückholen: ptmark archive repair --from FOLDER</translation>
    </message>
    <message>
      <source>take it from aside</source>
      <translation>von der Seite aufnehmen</translation>
    </message>
    <message>
      <source>take it from the drawing or the contract</source>
      <translation>der Zeichnung oder dem Vertrag entnehmen</translation>
    </message>
    <message>
      <source>take it in colour, or trace the indications by hand</source>
      <translation>in Farbe aufnehmen oder die Anzeigen von Hand nachziehen</translation>
    </message>
    <message>
      <source>take it in, or choose another folder</source>
      <translation>es aufnehmen oder einen anderen Ordner wählen</translation>
    </message>
    <message>
      <source>take it out</source>
      <translation>es herausnehmen</translation>
    </message>
    <message>
      <source>take it out; `ptmark criteria new` explains the keys</source>
      <translation>es herausnehmen; `ptmark criteria new` erklärt die Schlüssel</translation>
    </message>
    <message>
      <source>take one base out</source>
      <translation>eine Grundlage herausnehmen</translation>
    </message>
    <message>
      <source>take one of them out</source>
      <translation>eine davon herausnehmen</translation>
    </message>
    <message>
      <source>take out what does not belong there, or start with `ptmark criteria new`</source>
      <translation>herausnehmen, was nicht hineingehört, oder mit `ptmark criteria new` beginnen</translation>
    </message>
    <message>
      <source>take photos with the pattern in each corner, and filling the picture</source>
      <translation>Fotos mit dem Muster in jeder Ecke und bildfüllend aufnehmen</translation>
    </message>
    <message>
      <source>take the backup's folder</source>
      <translation>den Ordner der Sicherung nehmen</translation>
    </message>
    <message>
      <source>take the bundle into another folder and compare the two</source>
      <translation>das Paket in einen anderen Ordner nehmen und beide vergleichen</translation>
    </message>
    <message>
      <source>take the photo from straight above and give the crown's height: {0} of it is height over the scale</source>
      <translation>das Foto gerade von oben aufnehmen und die Höhe der Überhöhung angeben: {0} davon ist die Höhe über dem Maßstab</translation>
    </message>
    <message>
      <source>take the photo from straight above, or lay a card or a rectangle beside the indications</source>
      <translation>das Foto gerade von oben aufnehmen oder eine Karte oder ein Rechteck neben die Anzeigen legen</translation>
    </message>
    <message>
      <source>take the size of {0}</source>
      <translation>Größe aus {0} nehmen</translation>
    </message>
    <message>
      <source>take their permission away (mode 600), and sign with a new key if in doubt</source>
      <translation>ihnen das Recht nehmen (Modus 600) und im Zweifel mit einem neuen Schlüssel unterschreiben</translation>
    </message>
    <message>
      <source>take two lines at right angles on the part</source>
      <translation>zwei Linien im rechten Winkel auf dem Teil nehmen</translation>
    </message>
    <message>
      <source>taken as one end to end</source>
      <translation>als eine gerechnet, von Ende zu Ende</translation>
    </message>
    <message>
      <source>taken at {0} min, the last photo within {1}</source>
      <translation>aufgenommen nach {0} min, das letzte Foto innerhalb {1}</translation>
    </message>
    <message>
      <source>takes more than {0} rules in all</source>
      <translation>verknüpft insgesamt mehr als {0} Regeln</translation>
    </message>
    <message>
      <source>taking it away needs a reason</source>
      <translation>das Aufheben braucht einen Grund</translation>
    </message>
    <message>
      <source>text</source>
      <translation>Wortlaut</translation>
    </message>
    <message>
      <source>that hang together by gaps of {0}</source>
      <translation>die mit Abständen von {0} zusammenhängen</translation>
    </message>
    <message>
      <source>the AVIF picture cannot be read: {0}</source>
      <translation>das AVIF-Bild kann nicht gelesen werden: {0}</translation>
    </message>
    <message>
      <source>the HEIC picture cannot be read: {0}</source>
      <translation>das HEIC-Bild kann nicht gelesen werden: {0}</translation>
    </message>
    <message>
      <source>the box {0} holds no pixel of the {1} x {2} photo</source>
      <translation>der Ausschnitt {0} enthält kein Pixel des Fotos von {1} × {2}</translation>
    </message>
    <message>
      <source>the card does not lie flat: its markers are no plane, and every length may be wrong by some per cent. Hold it down all over, or print it on stiff board, and photograph again</source>
      <translation>die Karte liegt nicht flach: Ihre Marken bilden keine Ebene, und jede Länge kann um einige Prozent falsch sein. Drücken Sie sie ganz an oder drucken Sie sie auf festen Karton, und fotografieren Sie neu</translation>
    </message>
    <message>
      <source>the card's check length was not measured: it is taken to be printed at 100 %, within 0.3 %, and a page fitted to the paper makes every length wrong by some per cent. Measure it once with callipers</source>
      <translation>die Prüflänge der Karte wurde nicht gemessen: angenommen ist ein Druck mit 100 %, auf 0,3 % genau; eine an das Papier angepasste Seite macht jede Länge um einige Prozent falsch. Sie einmal mit dem Messschieber messen</translation>
    </message>
    <message>
      <source>the card's markers contradict each other</source>
      <translation>die Marken der Karte widersprechen einander</translation>
    </message>
    <message>
      <source>the check length</source>
      <translation>die Prüflänge</translation>
    </message>
    <message>
      <source>the checksum of its {0} part differs</source>
      <translation>die Prüfsumme ihres Teils {0} weicht ab</translation>
    </message>
    <message>
      <source>the corners as seen fit {0} x {1} mm as well as {2} x {3} mm, or better: check that the width runs from the first corner to the second. Exchanged, lengths are wrong by some {4} %</source>
      <translation>die Ecken im Bild passen zu {0} x {1} mm ebenso gut wie zu {2} x {3} mm, oder besser: prüfen, dass die Breite von der ersten zur zweiten Ecke läuft. Vertauscht sind Längen um etwa {4} % falsch</translation>
    </message>
    <message>
      <source>the criteria have no threshold</source>
      <translation>die Kriterien haben keine Schwelle</translation>
    </message>
    <message>
      <source>the database ends at line {0} of the log, but later lines lie beside the photos</source>
      <translation>die Datenbank endet bei Zeile {0} des Logbuchs, aber spätere Zeilen liegen neben den Fotos</translation>
    </message>
    <message>
      <source>the database is not empty</source>
      <translation>die Datenbank ist nicht leer</translation>
    </message>
    <message>
      <source>the database says: {0}</source>
      <translation>die Datenbank sagt: {0}</translation>
    </message>
    <message>
      <source>the database's driver is missing ({0})</source>
      <translation>der Treiber der Datenbank fehlt ({0})</translation>
    </message>
    <message>
      <source>the definition of a table is no text</source>
      <translation>die Festlegung einer Tabelle ist kein Text</translation>
    </message>
    <message>
      <source>the distance from the {0}</source>
      <translation>der Abstand von der Linie {0}</translation>
    </message>
    <message>
      <source>the drawing's or standard's revision that the figures were taken from</source>
      <translation>die Revision der Zeichnung oder Norm, der die Werte entnommen sind</translation>
    </message>
    <message>
      <source>the edges and the reference fix no pipe</source>
      <translation>Kanten und Referenz legen kein Rohr fest</translation>
    </message>
    <message>
      <source>the examiner has not signed this revision</source>
      <translation>der Prüfer hat diese Fassung nicht unterschrieben</translation>
    </message>
    <message>
      <source>the file cannot be read: {0}</source>
      <translation>die Datei kann nicht gelesen werden: {0}</translation>
    </message>
    <message>
      <source>the file changed while it was read</source>
      <translation>die Datei wurde beim Lesen verändert</translation>
    </message>
    <message>
      <source>the file has {0} GiB; at most 2 GiB are opened</source>
      <translation>die Datei hat {0} GiB; geöffnet werden höchstens 2 GiB</translation>
    </message>
    <message>
      <source>the file is an AVIF file, which the installed Pillow was built without</source>
      <translation>die Datei ist eine AVIF-Datei; das installierte Pillow wurde ohne AVIF gebaut</translation>
    </message>
    <message>
      <source>the file is cut short or damaged: take an earlier copy of the record</source>
      <translation>die Datei ist abgeschnitten oder beschädigt: eine frühere Kopie des Protokolls nehmen</translation>
    </message>
    <message>
      <source>the file is empty</source>
      <translation>die Datei ist leer</translation>
    </message>
    <message>
      <source>the file is no picture</source>
      <translation>die Datei ist kein Bild</translation>
    </message>
    <message>
      <source>the file is truncated: it ends after {0} bytes, before the picture does</source>
      <translation>die Datei ist abgeschnitten: Sie endet nach {0} Byte, vor dem Bild</translation>
    </message>
    <message>
      <source>the file is {0} file, which is not opened</source>
      <translation>die Datei ist {0}, was nicht geöffnet wird</translation>
    </message>
    <message>
      <source>the file may not be read</source>
      <translation>die Datei darf nicht gelesen werden</translation>
    </message>
    <message>
      <source>the first edge</source>
      <translation>die erste Kante</translation>
    </message>
    <message>
      <source>the first line</source>
      <translation>die erste Linie</translation>
    </message>
    <message>
      <source>the four corners contradict each other: one of them was picked beside the rectangle, or the picture is cropped or stretched. Lengths are as unsure as U says; pick the corners again under the magnifier, or use the photo as the camera wrote it</source>
      <translation>die vier Ecken widersprechen einander: Eine wurde neben dem Rechteck gewählt, oder das Bild ist beschnitten oder gestreckt. Längen sind so unsicher, wie U sagt; die Ecken unter der Lupe neu wählen oder das Foto so verwenden, wie die Kamera es geschrieben hat</translation>
    </message>
    <message>
      <source>the inspector's decision</source>
      <translation>die Entscheidung des Prüfers</translation>
    </message>
    <message>
      <source>the interpreter must say whether it is a crack, a crater crack or incomplete fusion</source>
      <translation>der Auswertende muss sagen, ob es ein Riss, ein Endkraterriss oder ungenügende Bindung ist</translation>
    </message>
    <message>
      <source>the key '{0!s}' stands twice</source>
      <translation>der Schlüssel „{0!s}“ steht zweimal da</translation>
    </message>
    <message>
      <source>the key is there twice</source>
      <translation>der Schlüssel steht zweimal da</translation>
    </message>
    <message>
      <source>the length</source>
      <translation>die Länge</translation>
    </message>
    <message>
      <source>the letter {0} stands for two indications</source>
      <translation>der Buchstabe {0} steht für zwei Anzeigen</translation>
    </message>
    <message>
      <source>the limit for its {0} ({1})</source>
      <translation>die Grenze nach {0} ({1})</translation>
    </message>
    <message>
      <source>the line</source>
      <translation>die Linie</translation>
    </message>
    <message>
      <source>the line along the pipe</source>
      <translation>die Linie längs des Rohrs</translation>
    </message>
    <message>
      <source>the line along the pipe runs {0} mm beside the reference: this does not lie on the pipe</source>
      <translation>die Linie längs des Rohrs läuft {0} mm neben der Referenz: Diese liegt nicht auf dem Rohr</translation>
    </message>
    <message>
      <source>the line of known length does not run along the pipe</source>
      <translation>die Linie bekannter Länge läuft nicht längs des Rohrs</translation>
    </message>
    <message>
      <source>the lines meet at {0} degrees as seen</source>
      <translation>die Linien treffen sich, wie gesehen, unter {0} Grad</translation>
    </message>
    <message>
      <source>the log has it, the database has not</source>
      <translation>das Logbuch hat es, die Datenbank nicht</translation>
    </message>
    <message>
      <source>the logo cannot be read ({0})</source>
      <translation>das Logo kann nicht gelesen werden ({0})</translation>
    </message>
    <message>
      <source>the marks are no view of one plane</source>
      <translation>die Marken sind kein Bild einer Ebene</translation>
    </message>
    <message>
      <source>the marks disagree by {0} px</source>
      <translation>die Marken widersprechen einander um {0} px</translation>
    </message>
    <message>
      <source>the marks lie in one line</source>
      <translation>die Marken liegen auf einer Linie</translation>
    </message>
    <message>
      <source>the optical centre is not the picture's middle: it looks cropped or stretched, and lengths across a line may be wrong by more than their uncertainty. Use the photo as the camera wrote it, or lay a card beside the indications</source>
      <translation>die optische Mitte ist nicht die Bildmitte: das Bild wirkt beschnitten oder gestreckt, und Längen quer zu einer Linie können um mehr als ihre Unsicherheit falsch sein. Das Foto so verwenden, wie die Kamera es schrieb, oder eine Karte neben die Anzeigen legen</translation>
    </message>
    <message>
      <source>the optical centre is not the picture's middle: it looks cropped, and tilt and working distance are less sure. Use the photo as the camera wrote it</source>
      <translation>die optische Mitte ist nicht die Bildmitte: Das Bild wirkt beschnitten, Neigung und Aufnahmeabstand sind weniger sicher. Das Foto so verwenden, wie die Kamera es schrieb</translation>
    </message>
    <message>
      <source>the outline has a point that is not a number</source>
      <translation>der Umriss hat einen Punkt, der keine Zahl ist</translation>
    </message>
    <message>
      <source>the outline reaches beyond the pipe's edge</source>
      <translation>der Umriss reicht über den Rand des Rohrs hinaus</translation>
    </message>
    <message>
      <source>the pattern never came near the corners of the picture</source>
      <translation>das Muster kam nie in die Nähe der Bildecken</translation>
    </message>
    <message>
      <source>the pattern was found in {0} photos, {1} are needed</source>
      <translation>das Muster wurde in {0} Fotos gefunden, {1} sind nötig</translation>
    </message>
    <message>
      <source>the photo after may not show all of it</source>
      <translation>das Foto danach zeigt vielleicht nicht alles davon</translation>
    </message>
    <message>
      <source>the photo cannot be laid on the part</source>
      <translation>das Foto kann nicht auf das Teil gelegt werden</translation>
    </message>
    <message>
      <source>the photo does not tell its focal length: how far the pipe bulges towards the camera is taken from a usual range, and U is larger. Use the photo as the camera wrote it</source>
      <translation>das Foto nennt seine Brennweite nicht: Wie weit sich das Rohr zur Kamera wölbt, ist aus einem üblichen Bereich genommen, und U ist größer. Das Foto so verwenden, wie die Kamera es schrieb</translation>
    </message>
    <message>
      <source>the photo does not tell when it was taken</source>
      <translation>das Foto sagt nicht, wann es aufgenommen wurde</translation>
    </message>
    <message>
      <source>the photo does not tell which camera took it</source>
      <translation>das Foto sagt nicht, welche Kamera es aufnahm</translation>
    </message>
    <message>
      <source>the photo has {0} × {1} px, the record's {2} × {3}</source>
      <translation>das Foto hat {0} × {1} px, das des Protokolls {2} × {3}</translation>
    </message>
    <message>
      <source>the photo holds no colour, so dye cannot be found in it</source>
      <translation>das Foto enthält keine Farbe, daher ist darin kein Farbstoff zu finden</translation>
    </message>
    <message>
      <source>the photo was changed since</source>
      <translation>das Foto wurde seither verändert</translation>
    </message>
    <message>
      <source>the photo with SHA-256 {0} is missing</source>
      <translation>das Foto mit dem SHA-256 {0} fehlt</translation>
    </message>
    <message>
      <source>the photo {0} is not there</source>
      <translation>das Foto {0} ist nicht da</translation>
    </message>
    <message>
      <source>the photo {0} with SHA-256 {1!s}… is not there</source>
      <translation>das Foto {0} mit dem SHA-256 {1!s}… ist nicht da</translation>
    </message>
    <message>
      <source>the photo {0}, SHA-256 {1!s}…, is not there</source>
      <translation>das Foto {0}, SHA-256 {1!s}…, ist nicht da</translation>
    </message>
    <message>
      <source>the photo's file</source>
      <translation>die Datei des Fotos</translation>
    </message>
    <message>
      <source>the photo, or its examined area, does not show the place</source>
      <translation>das Foto oder sein Prüfbereich zeigt die Stelle nicht</translation>
    </message>
    <message>
      <source>the picks on {0} are {1} px apart, under {2}</source>
      <translation>die Punkte liegen {1} px auseinander, unter {2}: {0}</translation>
    </message>
    <message>
      <source>the picture cannot be decoded: {0}</source>
      <translation>das Bild kann nicht dekodiert werden: {0}</translation>
    </message>
    <message>
      <source>the picture has not the shape of those that cameras write: it looks cropped or stretched, and lengths across a line may be wrong by more than their uncertainty. Use the photo as the camera wrote it, or lay a card beside the indications</source>
      <translation>das Bild hat nicht die Form, in der Kameras Bilder schreiben: Es wirkt beschnitten oder gestreckt, und Längen quer zu einer Strecke können um mehr als ihre Unsicherheit falsch sein. Das Foto so verwenden, wie die Kamera es geschrieben hat, oder eine Karte neben die Anzeigen legen</translation>
    </message>
    <message>
      <source>the picture has not the size that its camera wrote: it was resized, cropped or stretched, and lengths across a line may be wrong by more than their uncertainty. Use the photo as the camera wrote it, or lay a card beside the indications</source>
      <translation>das Bild hat nicht die Größe, die seine Kamera schrieb: es wurde skaliert, beschnitten oder gestreckt, und Längen quer zu einer Linie können um mehr als ihre Unsicherheit falsch sein. Das Foto so verwenden, wie die Kamera es schrieb, oder eine Karte neben die Anzeigen legen</translation>
    </message>
    <message>
      <source>the picture has {0} x {1} px, {2} megapixels; at most {3} are opened</source>
      <translation>das Bild hat {0} × {1} px, {2} Megapixel; geöffnet werden höchstens {3}</translation>
    </message>
    <message>
      <source>the picture is coded for high dynamic range (PQ or HLG), which has no fixed white</source>
      <translation>das Bild ist für hohen Dynamikumfang kodiert (PQ oder HLG), der kein festes Weiß hat</translation>
    </message>
    <message>
      <source>the picture is damaged: {0}</source>
      <translation>das Bild ist beschädigt: {0}</translation>
    </message>
    <message>
      <source>the picture is mirrored, as front cameras do: sizes hold, but left and right are swapped, and so is every place told from an edge or a datum. Use the photo unmirrored, with mirroring off in the camera</source>
      <translation>das Bild ist gespiegelt, wie Frontkameras es schreiben: Größen stimmen, doch links und rechts sind vertauscht, und so jeder Ort, der von einer Kante oder einem Bezug aus angegeben ist. Nehmen Sie das ungespiegelte Foto und schalten Sie das Spiegeln in der Kamera aus</translation>
    </message>
    <message>
      <source>the picture is {0} × {1} px, the record's photo {2} × {3} px</source>
      <translation>das Bild hat {0} × {1} px, das Foto des Protokolls {2} × {3} px</translation>
    </message>
    <message>
      <source>the picture must be uint8 of shape (H, W, 3), got {0} {1}</source>
      <translation>das Bild muss uint8 der Form (H, W, 3) sein, nicht {0} {1}</translation>
    </message>
    <message>
      <source>the picture's size reads {0} x {1} px</source>
      <translation>die Bildgröße liest sich als {0} × {1} px</translation>
    </message>
    <message>
      <source>the pipe is seen too far along its axis</source>
      <translation>das Rohr ist zu sehr in Richtung seiner Achse gesehen</translation>
    </message>
    <message>
      <source>the pipe's edges were found in the photo: look whether the marked lines lie on its two outer edges. Where they do not, pick two points on each edge</source>
      <translation>die Kanten des Rohrs wurden im Foto gefunden: nachsehen, ob die markierten Linien auf seinen beiden äußeren Kanten liegen. Wo nicht, auf jeder Kante zwei Punkte setzen</translation>
    </message>
    <message>
      <source>the pipe's edges, the {0} on it and a diameter of {1} mm contradict each other: of right ones fewer than 2 in 1000 do</source>
      <translation>die Kanten des Rohrs, {0} darauf und ein Durchmesser von {1} mm widersprechen einander: von richtigen tun das weniger als 2 von 1000</translation>
    </message>
    <message>
      <source>the pipe's surface turns away {0} degrees there, more than {1}</source>
      <translation>die Oberfläche des Rohrs wendet sich dort um {0} Grad ab, mehr als {1}</translation>
    </message>
    <message>
      <source>the pipe's two outer edges are not clear beside that line</source>
      <translation>die beiden äußeren Kanten des Rohrs sind neben dieser Linie nicht klar</translation>
    </message>
    <message>
      <source>the place is so bright that dye may not show</source>
      <translation>die Stelle ist so hell, dass Farbstoff dort womöglich nicht zu sehen ist</translation>
    </message>
    <message>
      <source>the point ({0}, {1}) lies outside the photo</source>
      <translation>der Punkt ({0}, {1}) liegt außerhalb des Fotos</translation>
    </message>
    <message>
      <source>the points lie {0} px off a flat pattern</source>
      <translation>die Punkte liegen {0} px neben einem ebenen Muster</translation>
    </message>
    <message>
      <source>the profile's unit {0}</source>
      <translation>die Einheit {0} des Profils</translation>
    </message>
    <message>
      <source>the profiles are based on each other in a circle</source>
      <translation>die Profile bauen im Kreis aufeinander auf</translation>
    </message>
    <message>
      <source>the program, outlines left as it found them</source>
      <translation>das Programm, Umrisse wie gefunden belassen</translation>
    </message>
    <message>
      <source>the record does not say when the developer was dry</source>
      <translation>das Protokoll sagt nicht, wann der Entwickler trocken war</translation>
    </message>
    <message>
      <source>the record does not tell which photo</source>
      <translation>das Protokoll sagt nicht, welches Foto</translation>
    </message>
    <message>
      <source>the reviewer's entries</source>
      <translation>die Einträge des Nachprüfers</translation>
    </message>
    <message>
      <source>the revision before it is missing</source>
      <translation>die Fassung davor fehlt</translation>
    </message>
    <message>
      <source>the role of</source>
      <translation>die Rolle von</translation>
    </message>
    <message>
      <source>the rule looks tilted by some {0} degrees, and its strokes tell that too faintly to measure by</source>
      <translation>der Maßstab sieht um etwa {0} Grad gekippt aus, und seine Striche sagen das zu schwach, um danach zu messen</translation>
    </message>
    <message>
      <source>the rules '{0!s}' lay{1} and are not to be had from there now; put the file back or choose the rules again</source>
      <translation>die Regeln „{0!s}“ lagen{1} und sind dort jetzt nicht zu haben; die Datei zurücklegen oder die Regeln neu wählen</translation>
    </message>
    <message>
      <source>the rules '{0!s}'{1} have changed since this verdict was made, so it is stale; `ptmark rejudge` judges again</source>
      <translation>die Regeln „{0!s}“{1} haben sich seit dieser Bewertung geändert, sie ist also überholt; `ptmark rejudge` bewertet neu</translation>
    </message>
    <message>
      <source>the rules take each other in a circle: {0}</source>
      <translation>die Regeln verknüpfen einander im Kreis: {0}</translation>
    </message>
    <message>
      <source>the same area measures {0} % {1} in the second photo: check both scale references</source>
      <translation>dieselbe Fläche misst im zweiten Foto {0} % {1}: beide Maßstabsreferenzen prüfen</translation>
    </message>
    <message>
      <source>the same reference is given twice</source>
      <translation>dieselbe Referenz ist zweimal angegeben</translation>
    </message>
    <message>
      <source>the scale card</source>
      <translation>der Maßstabskarte</translation>
    </message>
    <message>
      <source>the scene gives the edges as edges_mm</source>
      <translation>die Szene gibt die Kanten als edges_mm</translation>
    </message>
    <message>
      <source>the second edge</source>
      <translation>die zweite Kante</translation>
    </message>
    <message>
      <source>the second line</source>
      <translation>die zweite Linie</translation>
    </message>
    <message>
      <source>the second measurement has no scale</source>
      <translation>die zweite Messung hat keinen Maßstab</translation>
    </message>
    <message>
      <source>the server has no such role or login</source>
      <translation>der Server hat diese Rolle oder Anmeldung nicht</translation>
    </message>
    <message>
      <source>the sides cross: the corners are out of order, or one lies inside the other three</source>
      <translation>die Seiten kreuzen sich: Die Ecken sind in falscher Reihenfolge, oder eine liegt zwischen den anderen drei</translation>
    </message>
    <message>
      <source>the signature does not fit: {0}</source>
      <translation>die Unterschrift passt nicht: {0}</translation>
    </message>
    <message>
      <source>the signing key cannot be used ({0})</source>
      <translation>der Signierschlüssel kann nicht verwendet werden ({0})</translation>
    </message>
    <message>
      <source>the size</source>
      <translation>die Größe</translation>
    </message>
    <message>
      <source>the sizes and gaps</source>
      <translation>die Größen und Abstände</translation>
    </message>
    <message>
      <source>the store says: {0}</source>
      <translation>der Speicher sagt: {0}</translation>
    </message>
    <message>
      <source>the strokes seen may be any of {0}: which they are is taken from the length as typed. Check it against the rule's numerals, or pick two strokes farther apart</source>
      <translation>die sichtbaren Striche können jede dieser Teilungen sein: {0}. Welche es ist, sagt die eingegebene Länge. Sie mit der Bezifferung des Maßstabs vergleichen oder zwei Striche weiter auseinander setzen</translation>
    </message>
    <message>
      <source>the strokes tell the tilt only with the focal length, which is not known: lengths away from the rule are less sure. Use the photo as the camera wrote it, take it from straight above, or lay a card beside the indications</source>
      <translation>die Striche zeigen die Neigung nur zusammen mit der Brennweite, die nicht bekannt ist: Längen abseits des Maßstabs sind weniger sicher. Das Foto so verwenden, wie die Kamera es geschrieben hat, es gerade von oben aufnehmen oder eine Karte neben die Anzeigen legen</translation>
    </message>
    <message>
      <source>the suffix X holds linear indications to level 1 (memory)</source>
      <translation>der Zusatz X hält linienartige Anzeigen auf Grenze 1 (aus dem Gedächtnis)</translation>
    </message>
    <message>
      <source>the surface</source>
      <translation>der Oberfläche</translation>
    </message>
    <message>
      <source>the surface and both scales</source>
      <translation>der Oberfläche und beiden Maßstäben</translation>
    </message>
    <message>
      <source>the two edges cross or lie too near each other</source>
      <translation>die beiden Kanten kreuzen sich oder liegen zu nahe beieinander</translation>
    </message>
    <message>
      <source>the two references differ by {0} % in scale, En {1}: look whether both lie flat on the surface</source>
      <translation>die beiden Referenzen weichen im Maßstab um {0} % ab, En {1}: nachsehen, ob beide flach auf der Oberfläche liegen</translation>
    </message>
    <message>
      <source>the {0} and the {1} contradict each other: their scales differ by {2} %, En {3}; of two right ones fewer than 1 in 100 do</source>
      <translation>{0} und {1} widersprechen einander: Ihre Maßstäbe weichen um {2} % ab, En {3}; von zwei richtigen tun das weniger als 1 von 100</translation>
    </message>
    <message>
      <source>there are no millimetres without a scale</source>
      <translation>ohne Maßstab gibt es keine Millimeter</translation>
    </message>
    <message>
      <source>there is a {0} of this name, which keeps {1}</source>
      <translation>es gibt schon eine {0} dieses Namens, die {1} behält</translation>
    </message>
    <message>
      <source>there is no archive</source>
      <translation>es gibt kein Archiv</translation>
    </message>
    <message>
      <source>there is no indication {0}</source>
      <translation>es gibt keine Anzeige {0}</translation>
    </message>
    <message>
      <source>there is no photo yet</source>
      <translation>es gibt noch kein Foto</translation>
    </message>
    <message>
      <source>there is no photo {0} of {1}</source>
      <translation>es gibt kein Foto {0} von {1}</translation>
    </message>
    <message>
      <source>there is no profile named '{0!s}'</source>
      <translation>es gibt kein Profil namens „{0!s}“</translation>
    </message>
    <message>
      <source>there is no profile named '{0!s}' beside this file, nor among those shipped</source>
      <translation>es gibt kein Profil namens „{0!s}“ neben dieser Datei und keines unter den mitgelieferten</translation>
    </message>
    <message>
      <source>there is no profile or template named '{0!s}'</source>
      <translation>es gibt kein Profil und keine Vorlage namens „{0!s}“</translation>
    </message>
    <message>
      <source>there is no room for the copy</source>
      <translation>für die Kopie ist kein Platz</translation>
    </message>
    <message>
      <source>there is no rule with the id '{0!s}'</source>
      <translation>es gibt keine Regel mit der Kennung „{0!s}“</translation>
    </message>
    <message>
      <source>there is no such file</source>
      <translation>es gibt keine solche Datei</translation>
    </message>
    <message>
      <source>there is no such profile file</source>
      <translation>es gibt keine solche Profildatei</translation>
    </message>
    <message>
      <source>there is no such rule or hold</source>
      <translation>es gibt keine solche Regel oder Sperre</translation>
    </message>
    <message>
      <source>there is no verdict</source>
      <translation>es gibt keine Bewertung</translation>
    </message>
    <message>
      <source>there is not enough memory for {0} x {1} px</source>
      <translation>der Speicher reicht nicht für {0} × {1} px</translation>
    </message>
    <message>
      <source>there must be 1 to {0} [[rule]] tables</source>
      <translation>es müssen 1 bis {0} Tabellen [[rule]] da sein</translation>
    </message>
    <message>
      <source>these photos do not tell the lens</source>
      <translation>diese Fotos verraten das Objektiv nicht</translation>
    </message>
    <message>
      <source>these points fix no plane</source>
      <translation>diese Punkte legen keine Ebene fest</translation>
    </message>
    <message>
      <source>thickness</source>
      <translation>Dicke</translation>
    </message>
    <message>
      <source>thickness of the part</source>
      <translation>Dicke des Teils</translation>
    </message>
    <message>
      <source>this is no camera profile: {0}</source>
      <translation>das ist kein Kameraprofil: {0}</translation>
    </message>
    <message>
      <source>this is not an inspection record</source>
      <translation>das ist kein Prüfprotokoll</translation>
    </message>
    <message>
      <source>this is the whole area looked at, not the outline of an indication</source>
      <translation>das ist der ganze betrachtete Bereich, nicht der Umriss einer Anzeige</translation>
    </message>
    <message>
      <source>this kind of 16-bit TIFF is not read</source>
      <translation>diese Art von TIFF mit 16 Bit wird nicht gelesen</translation>
    </message>
    <message>
      <source>this photo shows {0} already</source>
      <translation>dieses Foto zeigt schon {0}</translation>
    </message>
    <message>
      <source>this trace does not lie on {0}</source>
      <translation>diese Zeichnung liegt nicht auf {0}</translation>
    </message>
    <message>
      <source>this version reads {0}; a newer one may read this file</source>
      <translation>diese Version liest {0}; eine neuere kann diese Datei vielleicht lesen</translation>
    </message>
    <message>
      <source>three of the corners lie on one line</source>
      <translation>drei der Ecken liegen auf einer Linie</translation>
    </message>
    <message>
      <source>three or more in a row count as one indication of their overall length</source>
      <translation>drei oder mehr in einer Reihe zählen als eine Anzeige ihrer Gesamtlänge</translation>
    </message>
    <message>
      <source>tilt not known</source>
      <translation>Neigung nicht bekannt</translation>
    </message>
    <message>
      <source>tilt the camera by some 30 degrees in half of the photos</source>
      <translation>die Kamera in der Hälfte der Fotos um etwa 30 Grad neigen</translation>
    </message>
    <message>
      <source>tilt {0}°</source>
      <translation>Neigung {0}°</translation>
    </message>
    <message>
      <source>to review</source>
      <translation>gegenzuprüfen</translation>
    </message>
    <message>
      <source>together</source>
      <translation>zusammen</translation>
    </message>
    <message>
      <source>too faint: shines less than 6 % of what is brightest near it</source>
      <translation>zu schwach: leuchtet weniger als 6 % vom Hellsten in der Nähe</translation>
    </message>
    <message>
      <source>too little is alike in both: {0}; over {1} must agree</source>
      <translation>in beiden ist zu wenig gleich: {0}; mehr als {1} müssen passen</translation>
    </message>
    <message>
      <source>too little of the scale card is clear</source>
      <translation>von der Maßstabskarte ist zu wenig klar</translation>
    </message>
    <message>
      <source>too pale</source>
      <translation>zu blass</translation>
    </message>
    <message>
      <source>too pale for the grain, but as much dye as a faint indication: give more light</source>
      <translation>zu blass für das Rauschen, aber so viel Farbstoff wie eine schwache Anzeige: mehr Licht geben</translation>
    </message>
    <message>
      <source>too pale: hardly redder than the developer beside it</source>
      <translation>zu blass: kaum röter als der Entwickler daneben</translation>
    </message>
    <message>
      <source>too pale: no redder than one step of the file's colour</source>
      <translation>zu blass: nicht röter als eine Stufe der Farbe in der Datei</translation>
    </message>
    <message>
      <source>too pale: {0} % of full dye</source>
      <translation>zu blass: {0} % der vollen Farbe</translation>
    </message>
    <message>
      <source>too pale: {0} % of the green light taken</source>
      <translation>zu blass: {0} % des grünen Lichts geschluckt</translation>
    </message>
    <message>
      <source>too uneven in colour: what holds less dye than 30 % of full does not show here</source>
      <translation>Farbe zu ungleichmäßig: was weniger als 30 % der vollen Farbe hält, zeigt sich hier nicht</translation>
    </message>
    <message>
      <source>top level</source>
      <translation>oberste Ebene</translation>
    </message>
    <message>
      <source>touching line</source>
      <translation>Berührlinie</translation>
    </message>
    <message>
      <source>trace again what a person has traced</source>
      <translation>noch einmal zeichnen, was von Hand gezeichnet ist</translation>
    </message>
    <message>
      <source>trace the same indication again, or add this one as another</source>
      <translation>dieselbe Anzeige noch einmal zeichnen oder diese als weitere hinzufügen</translation>
    </message>
    <message>
      <source>trace the same indications again, in records of their own</source>
      <translation>dieselben Anzeigen noch einmal zeichnen, in eigenen Protokollen</translation>
    </message>
    <message>
      <source>trace {0}</source>
      <translation>{0} zeichnen</translation>
    </message>
    <message>
      <source>trace {0} again</source>
      <translation>{0} noch einmal zeichnen</translation>
    </message>
    <message>
      <source>transverse crack</source>
      <translation>Querriss</translation>
    </message>
    <message>
      <source>two lines</source>
      <translation>zwei Linien</translation>
    </message>
    <message>
      <source>two lines tell the tilt faintly: a card or a rectangle is surer</source>
      <translation>zwei Linien verraten die Neigung nur schwach: Eine Karte oder ein Rechteck ist sicherer</translation>
    </message>
    <message>
      <source>two photos have the same time</source>
      <translation>zwei Fotos haben dieselbe Zeit</translation>
    </message>
    <message>
      <source>type it again</source>
      <translation>noch einmal eingeben</translation>
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
      <source>undercut</source>
      <translation>Einbrandkerbe</translation>
    </message>
    <message>
      <source>underfill</source>
      <translation>Decklagenunterwölbung</translation>
    </message>
    <message>
      <source>uniformly distributed porosity</source>
      <translation>gleichmäßig verteilte Porosität</translation>
    </message>
    <message>
      <source>unknown kind</source>
      <translation>Art unbekannt</translation>
    </message>
    <message>
      <source>unknown kind of reference {0}</source>
      <translation>unbekannte Art von Referenz {0}</translation>
    </message>
    <message>
      <source>unknown tilt of the camera</source>
      <translation>unbekannte Neigung der Kamera</translation>
    </message>
    <message>
      <source>unknown version {0}</source>
      <translation>unbekannte Version {0}</translation>
    </message>
    <message>
      <source>unless {0}</source>
      <translation>außer {0}</translation>
    </message>
    <message>
      <source>unnamed profile</source>
      <translation>Profil ohne Namen</translation>
    </message>
    <message>
      <source>until then nothing is judged by this profile</source>
      <translation>bis dahin wird nach diesem Profil nichts bewertet</translation>
    </message>
    <message>
      <source>update ptmark</source>
      <translation>ptmark aktualisieren</translation>
    </message>
    <message>
      <source>use about = "scene", or leave it out</source>
      <translation>about = "scene" verwenden oder weglassen</translation>
    </message>
    <message>
      <source>use letters, figures and hyphens</source>
      <translation>Buchstaben, Ziffern und Bindestriche verwenden</translation>
    </message>
    <message>
      <source>use one of: {0}</source>
      <translation>eines davon verwenden: {0}</translation>
    </message>
    <message>
      <source>use small letters, digits, dots and hyphens</source>
      <translation>kleine Buchstaben, Ziffern, Punkte und Bindestriche verwenden</translation>
    </message>
    <message>
      <source>use the camera's profile</source>
      <translation>Kameraprofil verwenden</translation>
    </message>
    <message>
      <source>use the photo as the camera wrote it, or calibrate the camera: {0} of it is the focal length</source>
      <translation>das Foto so verwenden, wie die Kamera es schrieb, oder die Kamera kalibrieren: {0} davon ist die Brennweite</translation>
    </message>
    <message>
      <source>use the photos as the camera wrote them, not as a messenger sent them</source>
      <translation>die Fotos so verwenden, wie die Kamera sie schrieb, nicht wie ein Nachrichtendienst sie schickte</translation>
    </message>
    <message>
      <source>verdict and findings</source>
      <translation>Bewertung und Befunde</translation>
    </message>
    <message>
      <source>verdict of all photos</source>
      <translation>Bewertung aller Fotos</translation>
    </message>
    <message>
      <source>verdict of the whole: none, none</source>
      <translation>Bewertung des Ganzen: keine, keine</translation>
    </message>
    <message>
      <source>verdict of the whole: none, {0}</source>
      <translation>Bewertung des Ganzen: keine, {0}</translation>
    </message>
    <message>
      <source>verdict of the whole: {0}, none</source>
      <translation>Bewertung des Ganzen: {0}, keine</translation>
    </message>
    <message>
      <source>verdict of the whole: {0}, {1}</source>
      <translation>Bewertung des Ganzen: {0}, {1}</translation>
    </message>
    <message>
      <source>verified</source>
      <translation>geprüft</translation>
    </message>
    <message>
      <source>wait until it ends, or choose another folder</source>
      <translation>warten, bis sie fertig ist, oder einen anderen Ordner wählen</translation>
    </message>
    <message>
      <source>was changed itself: {0}</source>
      <translation>wurde selbst verändert: {0}</translation>
    </message>
    <message>
      <source>was changed since saving: {0}</source>
      <translation>wurde seit dem Speichern verändert: {0}</translation>
    </message>
    <message>
      <source>was deleted meanwhile</source>
      <translation>wurde inzwischen gelöscht</translation>
    </message>
    <message>
      <source>was moved, replaced or taken away since it was opened</source>
      <translation>wurde verschoben, ersetzt oder entfernt, seit es geöffnet wurde</translation>
    </message>
    <message>
      <source>was taken {0} min after the developer by the camera's clock</source>
      <translation>wurde nach der Uhr der Kamera {0} min nach dem Entwickler aufgenommen</translation>
    </message>
    <message>
      <source>what agrees is no view of one plane: {0}</source>
      <translation>was übereinstimmt, ist kein Bild einer Ebene: {0}</translation>
    </message>
    <message>
      <source>what is alike in both lies beside the indications, as a rule or a label does, and may have been moved</source>
      <translation>was in beiden gleich ist, liegt neben den Anzeigen, wie ein Lineal oder ein Etikett, und kann bewegt worden sein</translation>
    </message>
    <message>
      <source>what is cautioned of</source>
      <translation>worauf hingewiesen wird</translation>
    </message>
    <message>
      <source>what the photo cannot show</source>
      <translation>was das Foto nicht zeigen kann</translation>
    </message>
    <message>
      <source>what was chosen for all photos</source>
      <translation>was für alle Fotos gewählt wurde</translation>
    </message>
    <message>
      <source>what was given for the photo</source>
      <translation>was zum Foto angegeben wurde</translation>
    </message>
    <message>
      <source>what was left out</source>
      <translation>was ausgelassen wurde</translation>
    </message>
    <message>
      <source>whatever meets all of {0}{1}</source>
      <translation>was alles aus {0}{1} erfüllt</translation>
    </message>
    <message>
      <source>whatever meets {0}, unless it meets {1}</source>
      <translation>was {0} erfüllt, außer es erfüllt {1}</translation>
    </message>
    <message>
      <source>whatever meets {0}{1}</source>
      <translation>was {0}{1} erfüllt</translation>
    </message>
    <message>
      <source>where the dye ends, between 40 % and 60 % of its contrast</source>
      <translation>wo der Farbstoff endet, zwischen 40 % und 60 % seines Kontrasts</translation>
    </message>
    <message>
      <source>where the figures stand: number and revision of the drawing</source>
      <translation>wo die Werte stehen: Nummer und Revision der Zeichnung</translation>
    </message>
    <message>
      <source>where the flat reference touches the pipe</source>
      <translation>wo die ebene Referenz das Rohr berührt</translation>
    </message>
    <message>
      <source>where the reference was picked in the photo</source>
      <translation>wo die Referenz im Foto gesetzt wurde</translation>
    </message>
    <message>
      <source>where the row is {0}</source>
      <translation>wo die Reihe {0} ist</translation>
    </message>
    <message>
      <source>wide</source>
      <translation>breit</translation>
    </message>
    <message>
      <source>width</source>
      <translation>Breite</translation>
    </message>
    <message>
      <source>within the uncertainty it may be either, and both are judged</source>
      <translation>innerhalb der Unsicherheit kann sie beides sein, und beides wird bewertet</translation>
    </message>
    <message>
      <source>within the window</source>
      <translation>innerhalb des Fensters</translation>
    </message>
    <message>
      <source>within {0} {1}2 and {2} {3}</source>
      <translation>innerhalb {0} {1}2 und {2} {3}</translation>
    </message>
    <message>
      <source>wormhole</source>
      <translation>Schlauchpore</translation>
    </message>
    <message>
      <source>write 10:05 or 2026-01-15T10:05, by the camera's clock</source>
      <translation>10:05 oder 2026-01-15T10:05 schreiben, nach der Uhr der Kamera</translation>
    </message>
    <message>
      <source>write FIRST-LAST in minutes, or one of {0}</source>
      <translation>VON-BIS in Minuten schreiben oder eines davon: {0}</translation>
    </message>
    <message>
      <source>write a PNG</source>
      <translation>ein PNG schreiben</translation>
    </message>
    <message>
      <source>write a length with its unit, such as 150mm or 6in</source>
      <translation>eine Länge mit Einheit schreiben, etwa 150mm oder 6in</translation>
    </message>
    <message>
      <source>write each as "5 {0}"</source>
      <translation>jede als "5 {0}" schreiben</translation>
    </message>
    <message>
      <source>write it as in ["100", "401"]</source>
      <translation>es schreiben wie in ["100", "401"]</translation>
    </message>
    <message>
      <source>write it as in [{ up_to = "&lt;= 10 mm", reject = "&gt; 2 mm" }, { reject = "&gt; 3 mm" }]</source>
      <translation>es schreiben wie in [{ up_to = "&lt;= 10 mm", reject = "&gt; 2 mm" }, { reject = "&gt; 3 mm" }]</translation>
    </message>
    <message>
      <source>write it as in linear = "&gt; 3"</source>
      <translation>es schreiben wie in linear = "&gt; 3"</translation>
    </message>
    <message>
      <source>write it as in number = "&gt;= 3"</source>
      <translation>es schreiben wie in number = "&gt;= 3"</translation>
    </message>
    <message>
      <source>write it as in {0} = "&gt;= 4"</source>
      <translation>es schreiben wie in {0} = "&gt;= 4"</translation>
    </message>
    <message>
      <source>write it as in {0} = "{1}"</source>
      <translation>es schreiben wie in {0} = "{1}"</translation>
    </message>
    <message>
      <source>write it as in {0} = ["148 {1}", "105 {2}"]</source>
      <translation>es schreiben wie in {0} = ["148 {1}", "105 {2}"]</translation>
    </message>
    <message>
      <source>write it as in {0} = ["…", "…"]</source>
      <translation>es schreiben wie in {0} = ["…", "…"]</translation>
    </message>
    <message>
      <source>write it in {0}</source>
      <translation>in {0} schreiben</translation>
    </message>
    <message>
      <source>write minutes, such as 2,5,10</source>
      <translation>Minuten schreiben, etwa 2,5,10</translation>
    </message>
    <message>
      <source>write one key a line, its value in quotes: reject = "&gt; 5 mm"</source>
      <translation>je Zeile ein Schlüssel, sein Wert in Anführungszeichen: reject = "&gt; 5 mm"</translation>
    </message>
    <message>
      <source>write text in quotes</source>
      <translation>Text in Anführungszeichen schreiben</translation>
    </message>
    <message>
      <source>x {0} to {1} mm, y {2} to {3} mm (down)</source>
      <translation>x {0} bis {1} mm, y {2} bis {3} mm (nach unten)</translation>
    </message>
    <message>
      <source>{0!s} is in the set already, as {1}</source>
      <translation>{0!s} ist schon in der Prüfung, als {1}</translation>
    </message>
    <message>
      <source>{0!s}, record.json</source>
      <translation>{0!s}, record.json</translation>
    </message>
    <message>
      <source>{0} (counting those {1})</source>
      <translation>{0} (gezählt nur die {1})</translation>
    </message>
    <message>
      <source>{0} (the record names {1!s}…)</source>
      <translation>{0} (das Protokoll nennt {1!s}…)</translation>
    </message>
    <message>
      <source>{0} ({1})</source>
      <translation>{0} ({1})</translation>
    </message>
    <message>
      <source>{0} ({1}) known to ± {2} or better ({3})</source>
      <translation>{0} ({1}) auf ± {2} oder besser bekannt ({3})</translation>
    </message>
    <message>
      <source>{0} ({1}) measured again, since it lies on the limit ({2})</source>
      <translation>{0} ({1}) noch einmal gemessen, da es auf der Grenze liegt ({2})</translation>
    </message>
    <message>
      <source>{0} ({1}; no reason given)</source>
      <translation>{0} ({1}; kein Grund angegeben)</translation>
    </message>
    <message>
      <source>{0} Bars: ± U (k = 2).</source>
      <translation>{0} Balken: ± U (k = 2).</translation>
    </message>
    <message>
      <source>{0} are not six numbers</source>
      <translation>{0} sind nicht sechs Zahlen</translation>
    </message>
    <message>
      <source>{0} at {1} min</source>
      <translation>{0} bei {1} min</translation>
    </message>
    <message>
      <source>{0} bits a channel were rounded to 8.</source>
      <translation>{0} Bit je Kanal wurden auf 8 gerundet.</translation>
    </message>
    <message>
      <source>{0} by {1}</source>
      <translation>{0} × {1}</translation>
    </message>
    <message>
      <source>{0} bytes, set out as written</source>
      <translation>{0} Byte, angeordnet wie geschrieben</translation>
    </message>
    <message>
      <source>{0} from the {1}, {2}</source>
      <translation>{0} von der Linie {1}, {2}</translation>
    </message>
    <message>
      <source>{0} given, but the rule shows {1} steps of {2} between the two ends, {3}</source>
      <translation>{0} angegeben, aber der Maßstab zeigt {1} Teilstriche von {2} zwischen den Enden, {3}</translation>
    </message>
    <message>
      <source>{0} has {1} points, not {2}</source>
      <translation>{0} hat {1} Punkte, nicht {2}</translation>
    </message>
    <message>
      <source>{0} in</source>
      <translation>{0} in</translation>
    </message>
    <message>
      <source>{0} in a line with gaps of {1}</source>
      <translation>{0} in einer Reihe mit Abständen von {1}</translation>
    </message>
    <message>
      <source>{0} in a rectangle of {1}</source>
      <translation>{0} in einem Rechteck von {1}</translation>
    </message>
    <message>
      <source>{0} in line {1}</source>
      <translation>{0} in Zeile {1}</translation>
    </message>
    <message>
      <source>{0} in {1} of weld</source>
      <translation>{0} auf {1} Naht</translation>
    </message>
    <message>
      <source>{0} indications</source>
      <translation>{0} Anzeigen</translation>
    </message>
    <message>
      <source>{0} indications named {1}</source>
      <translation>{0} Anzeigen, benannt {1}</translation>
    </message>
    <message>
      <source>{0} indications of {1} records</source>
      <translation>{0} Anzeigen aus {1} Protokollen</translation>
    </message>
    <message>
      <source>{0} is beyond all measure</source>
      <translation>{0} liegt jenseits allen Maßes</translation>
    </message>
    <message>
      <source>{0} is no JSON value</source>
      <translation>{0} ist kein JSON-Wert</translation>
    </message>
    <message>
      <source>{0} is no key</source>
      <translation>{0} ist kein Schlüssel</translation>
    </message>
    <message>
      <source>{0} is no number</source>
      <translation>{0} ist keine Zahl</translation>
    </message>
    <message>
      <source>{0} is no scale reference</source>
      <translation>{0} ist keine Maßstabsreferenz</translation>
    </message>
    <message>
      <source>{0} is no text</source>
      <translation>{0} ist kein Text</translation>
    </message>
    <message>
      <source>{0} is not in the database</source>
      <translation>{0} ist nicht in der Datenbank</translation>
    </message>
    <message>
      <source>{0} is not the same</source>
      <translation>{0} ist nicht dieselbe</translation>
    </message>
    <message>
      <source>{0} is nothing of the archive's</source>
      <translation>{0} gehört nicht zum Archiv</translation>
    </message>
    <message>
      <source>{0} is the most</source>
      <translation>{0} ist das Höchste</translation>
    </message>
    <message>
      <source>{0} is too large</source>
      <translation>{0} ist zu groß</translation>
    </message>
    <message>
      <source>{0} is too large a whole number</source>
      <translation>{0} ist als ganze Zahl zu groß</translation>
    </message>
    <message>
      <source>{0} is {1}</source>
      <translation>{0} ist {1}</translation>
    </message>
    <message>
      <source>{0} is {1} long and may be {2}.</source>
      <translation>{0}: {1} lang, möglicherweise {2}.</translation>
    </message>
    <message>
      <source>{0} is {1} long, not {2}.</source>
      <translation>{0}: {1} lang, nicht {2}.</translation>
    </message>
    <message>
      <source>{0} is {1} long, {2}.</source>
      <translation>{0}: {1} lang, {2}.</translation>
    </message>
    <message>
      <source>{0} is {1} px long; under {2} px it fixes no scale</source>
      <translation>{0}: {1} px lang; unter {2} px legt sie keinen Maßstab fest</translation>
    </message>
    <message>
      <source>{0} known to ± {1} or better would decide it.</source>
      <translation>{0}, auf ± {1} oder besser bekannt, würde es entscheiden.</translation>
    </message>
    <message>
      <source>{0} lies there but is another photo or was changed: its SHA-256 differs</source>
      <translation>{0} liegt dort, ist aber ein anderes Foto oder wurde verändert: Der SHA-256 weicht ab</translation>
    </message>
    <message>
      <source>{0} linear indications</source>
      <translation>{0} linienartige Anzeigen</translation>
    </message>
    <message>
      <source>{0} long</source>
      <translation>{0} lang</translation>
    </message>
    <message>
      <source>{0} long or longer</source>
      <translation>{0} lang oder länger</translation>
    </message>
    <message>
      <source>{0} long, {1}</source>
      <translation>{0} lang, {1}</translation>
    </message>
    <message>
      <source>{0} maps the surface to a line</source>
      <translation>{0} bildet die Oberfläche auf eine Linie ab</translation>
    </message>
    <message>
      <source>{0} marks given</source>
      <translation>{0} Marken angegeben</translation>
    </message>
    <message>
      <source>{0} may be relevant ({1}, relevant if {2})</source>
      <translation>{0} ist möglicherweise relevant ({1}, relevant wenn {2})</translation>
    </message>
    <message>
      <source>{0} may be {1}</source>
      <translation>{0} ist möglicherweise {1}</translation>
    </message>
    <message>
      <source>{0} may be {1} ({2}: {3} by {4}; so wide, it is linear from {5} of length on)</source>
      <translation>{0} ist möglicherweise {1} ({2}: {3} × {4}; bei dieser Breite linienartig ab {5} Länge)</translation>
    </message>
    <message>
      <source>{0} may count apart from {1}</source>
      <translation>{0} zählen möglicherweise getrennt von {1}</translation>
    </message>
    <message>
      <source>{0} may count apart from {1} (a gap of {2}; {3} makes them one)</source>
      <translation>{0} zählen möglicherweise getrennt von {1} (ein Abstand von {2}; {3} macht sie zu einer)</translation>
    </message>
    <message>
      <source>{0} may count as one</source>
      <translation>{0} zählen möglicherweise als eine</translation>
    </message>
    <message>
      <source>{0} may count as one (a gap of {1}; {2} makes them one)</source>
      <translation>{0} zählen möglicherweise als eine (ein Abstand von {1}; {2} macht sie zu einer)</translation>
    </message>
    <message>
      <source>{0} may count as one or apart</source>
      <translation>{0} zählen möglicherweise als eine oder getrennt</translation>
    </message>
    <message>
      <source>{0} may count as one or apart (a gap of {1}; {2} makes them one)</source>
      <translation>{0} zählen möglicherweise als eine oder getrennt (ein Abstand von {1}; {2} macht sie zu einer)</translation>
    </message>
    <message>
      <source>{0} means: the true length lies between {1} and {2} mm, in about 95 of 100 such measurements.</source>
      <translation>{0} bedeutet: Die wahre Länge liegt zwischen {1} und {2} mm, in etwa 95 von 100 solchen Messungen.</translation>
    </message>
    <message>
      <source>{0} min, {1} ({2}).</source>
      <translation>{0} min, {1} ({2}).</translation>
    </message>
    <message>
      <source>{0} mm</source>
      <translation>{0} mm</translation>
    </message>
    <message>
      <source>{0} mm over {1} px is {2} mm per pixel, outside {3} to {4}</source>
      <translation>{0} mm auf {1} px sind {2} mm je Pixel, außerhalb von {3} bis {4}</translation>
    </message>
    <message>
      <source>{0} mm per pixel at the reference</source>
      <translation>{0} mm je Pixel an der Referenz</translation>
    </message>
    <message>
      <source>{0} named ISO 6520-1 {1}</source>
      <translation>{0} benannt nach ISO 6520-1 {1}</translation>
    </message>
    <message>
      <source>{0} of one and the same indication</source>
      <translation>{0} an ein und derselben Anzeige</translation>
    </message>
    <message>
      <source>{0} of the card's {1} markers not seen: the map is less sure away from the others. Uncover the card and photograph again where it matters</source>
      <translation>{0} der {1} Marken der Karte nicht gesehen: Die Abbildung ist abseits der anderen weniger sicher. Die Karte freilegen und noch einmal fotografieren, wo es darauf ankommt</translation>
    </message>
    <message>
      <source>{0} of the weld's length</source>
      <translation>{0} der Nahtlänge</translation>
    </message>
    <message>
      <source>{0} of {1} bits a pixel</source>
      <translation>{0} mit {1} Bit je Pixel</translation>
    </message>
    <message>
      <source>{0} of {1} marker corners covered or out of place: left out. Uncover the card and lay it flat</source>
      <translation>{0} von {1} Markenecken verdeckt oder verschoben: ausgelassen. Die Karte freilegen und flach hinlegen</translation>
    </message>
    <message>
      <source>{0} of {1} mm is no length</source>
      <translation>{0} von {1} mm ist keine Länge</translation>
    </message>
    <message>
      <source>{0} of {1} points agree, within {2} px</source>
      <translation>{0} von {1} Punkten passen, auf {2} px</translation>
    </message>
    <message>
      <source>{0} of {1}: En = {2}, above 1</source>
      <translation>{0} von {1}: En = {2}, über 1</translation>
    </message>
    <message>
      <source>{0} of {1}: none, none</source>
      <translation>{0} von {1}: keine, keine</translation>
    </message>
    <message>
      <source>{0} of {1}: none, {2}</source>
      <translation>{0} von {1}: keine, {2}</translation>
    </message>
    <message>
      <source>{0} of {1}: {2}, none</source>
      <translation>{0} von {1}: {2}, keine</translation>
    </message>
    <message>
      <source>{0} of {1}: {2}, {3}</source>
      <translation>{0} von {1}: {2}, {3}</translation>
    </message>
    <message>
      <source>{0} on a pipe</source>
      <translation>{0} auf einem Rohr</translation>
    </message>
    <message>
      <source>{0} open or wrong, so nothing can be judged by these rules</source>
      <translation>{0} offen oder falsch, so ist nach diesen Regeln nichts zu bewerten</translation>
    </message>
    <message>
      <source>{0} operators with {1} results give no precision</source>
      <translation>{0} Prüfer mit {1} Ergebnissen ergeben keine Präzision</translation>
    </message>
    <message>
      <source>{0} or less</source>
      <translation>{0} oder weniger</translation>
    </message>
    <message>
      <source>{0} or longer</source>
      <translation>{0} oder länger</translation>
    </message>
    <message>
      <source>{0} or more</source>
      <translation>{0} oder mehr</translation>
    </message>
    <message>
      <source>{0} pairs tell nothing of agreement</source>
      <translation>{0} Paare sagen nichts über die Übereinstimmung</translation>
    </message>
    <message>
      <source>{0} photo is no series</source>
      <translation>{0} Foto ist keine Reihe</translation>
    </message>
    <message>
      <source>{0} px</source>
      <translation>{0} px</translation>
    </message>
    <message>
      <source>{0} px are too few to draw in</source>
      <translation>{0} px sind zu wenig zum Zeichnen</translation>
    </message>
    <message>
      <source>{0} repeats of traced outlines, {1} are needed</source>
      <translation>{0} Wiederholungen gezeichneter Umrisse, {1} sind nötig</translation>
    </message>
    <message>
      <source>{0} rounded indications</source>
      <translation>{0} nicht linienartige Anzeigen</translation>
    </message>
    <message>
      <source>{0} steps of {1} between the ends</source>
      <translation>{0} Teilstriche von {1} zwischen den Enden</translation>
    </message>
    <message>
      <source>{0} taken as one, {1} end to end</source>
      <translation>{0} als eine gerechnet, {1} von Ende zu Ende</translation>
    </message>
    <message>
      <source>{0} tells no place ({1})</source>
      <translation>{0} nennt keine Lage ({1})</translation>
    </message>
    <message>
      <source>{0} that hang together by gaps of {1}</source>
      <translation>{0}, die mit Abständen von {1} zusammenhängen</translation>
    </message>
    <message>
      <source>{0} that is relevant, whatever its size</source>
      <translation>{0}, sofern relevant, gleich welcher Größe</translation>
    </message>
    <message>
      <source>{0} times for {1} photos</source>
      <translation>{0} Zeiten für {1} Fotos</translation>
    </message>
    <message>
      <source>{0} times the length</source>
      <translation>das {0}-fache der Länge</translation>
    </message>
    <message>
      <source>{0} to {1}</source>
      <translation>{0} bis {1}</translation>
    </message>
    <message>
      <source>{0} to {1} min</source>
      <translation>{0} bis {1} min</translation>
    </message>
    <message>
      <source>{0} to {1} °C ({2!s})</source>
      <translation>{0} bis {1} °C ({2!s})</translation>
    </message>
    <message>
      <source>{0} was found by the first only</source>
      <translation>{0} fand nur der erste</translation>
    </message>
    <message>
      <source>{0} was found by the second only</source>
      <translation>{0} fand nur der zweite</translation>
    </message>
    <message>
      <source>{0} was not traced by hand</source>
      <translation>{0} wurde nicht von Hand gezeichnet</translation>
    </message>
    <message>
      <source>{0} whose distance from the line '{1!s}' is {2}</source>
      <translation>{0}, deren Abstand von der Linie „{1!s}“ {2} ist</translation>
    </message>
    <message>
      <source>{0} whose number is</source>
      <translation>{0}, deren Anzahl ist</translation>
    </message>
    <message>
      <source>{0} whose number is {1} in any {2} of weld</source>
      <translation>{0}, deren Anzahl auf je {2} Naht {1} ist</translation>
    </message>
    <message>
      <source>{0} whose number is {1} on a frame of {2}, at its worst place and turn</source>
      <translation>{0}, deren Anzahl auf einem Rahmen von {2} in der ungünstigsten Lage und Drehung {1} ist</translation>
    </message>
    <message>
      <source>{0} whose summed length is</source>
      <translation>{0}, deren Längensumme ist</translation>
    </message>
    <message>
      <source>{0} whose summed length is {1} in any {2} of weld</source>
      <translation>{0}, deren Längensumme auf je {2} Naht {1} ist</translation>
    </message>
    <message>
      <source>{0} whose summed length is {1} on a frame of {2}, at its worst place and turn</source>
      <translation>{0}, deren Längensumme auf einem Rahmen von {2} in der ungünstigsten Lage und Drehung {1} ist</translation>
    </message>
    <message>
      <source>{0} wide</source>
      <translation>{0} breit</translation>
    </message>
    <message>
      <source>{0} widths</source>
      <translation>{0} Breiten</translation>
    </message>
    <message>
      <source>{0} would be {1}</source>
      <translation>{0} wäre {1}</translation>
    </message>
    <message>
      <source>{0} would be {1} long, {2}.</source>
      <translation>{0} wäre {1} lang, {2}.</translation>
    </message>
    <message>
      <source>{0} x {1} mm contradicts the rectangle as seen</source>
      <translation>{0} × {1} mm widerspricht dem Rechteck, wie es zu sehen ist</translation>
    </message>
    <message>
      <source>{0} years with the reason '{1!s}' is no rule</source>
      <translation>{0} Jahre mit dem Grund „{1!s}“ sind keine Regel</translation>
    </message>
    <message>
      <source>{0} {1} in any rectangle of up to {2} {3}2 with no side above {4} {5}, at its worst place and turn</source>
      <translation>{0} {1} in jedem Rechteck bis {2} {3}2 ohne Seite über {4} {5}, in der ungünstigsten Lage und Drehung</translation>
    </message>
    <message>
      <source>{0} {1} that hang together by gaps of {2}, edge to edge, where their {3} is {4}</source>
      <translation>{0} {1}, die mit Abständen von {2} von Rand zu Rand zusammenhängen, wo {3} {4} ist</translation>
    </message>
    <message>
      <source>{0} {1} that one straight line crosses, each next one {2} away, edge to edge{3}</source>
      <translation>{0} {1}, die eine gerade Linie schneidet, jede nächste {2} entfernt, von Rand zu Rand{3}</translation>
    </message>
    <message>
      <source>{0} {1}, row {2}, {3}</source>
      <translation>{0} {1}, Zeile {2}, {3}</translation>
    </message>
    <message>
      <source>{0} {1}indication{2}</source>
      <translation>{0} {1}Anzeige{2}</translation>
    </message>
    <message>
      <source>{0} × {1} cells are too many</source>
      <translation>{0} × {1} Zellen sind zu viele</translation>
    </message>
    <message>
      <source>{0}, and nothing else judges {1}: set its scale.</source>
      <translation>{0}, und nichts anderes bewertet {1}: seinen Maßstab setzen.</translation>
    </message>
    <message>
      <source>{0}, but needs {1}</source>
      <translation>{0}, braucht aber {1}</translation>
    </message>
    <message>
      <source>{0}, end to end {1}</source>
      <translation>{0}, von Ende zu Ende {1}</translation>
    </message>
    <message>
      <source>{0}, history revision {1}</source>
      <translation>{0}, frühere Fassung {1}</translation>
    </message>
    <message>
      <source>{0}, in a hull of {1}</source>
      <translation>{0}, in einer Hülle von {1}</translation>
    </message>
    <message>
      <source>{0}, line {1}</source>
      <translation>{0}, Zeile {1}</translation>
    </message>
    <message>
      <source>{0}, no source</source>
      <translation>{0}, ohne Quelle</translation>
    </message>
    <message>
      <source>{0}, not {1}.</source>
      <translation>{0}, nicht {1}.</translation>
    </message>
    <message>
      <source>{0}, or ask for permission; what was kept before stands</source>
      <translation>{0}, oder fragen Sie nach der Erlaubnis; was vorher aufbewahrt war, steht</translation>
    </message>
    <message>
      <source>{0}, or lay a rule or the card on the pipe</source>
      <translation>{0}, oder einen Maßstab oder die Karte auf das Rohr legen</translation>
    </message>
    <message>
      <source>{0}, relevant if {1}</source>
      <translation>{0}, relevant wenn {1}</translation>
    </message>
    <message>
      <source>{0}, row {1}</source>
      <translation>{0}, Zeile {1}</translation>
    </message>
    <message>
      <source>{0}, schema</source>
      <translation>{0}, Schema</translation>
    </message>
    <message>
      <source>{0}, seal</source>
      <translation>{0}, Siegel</translation>
    </message>
    <message>
      <source>{0}, set by the inspector: {1!s}</source>
      <translation>{0}, vom Prüfer gesetzt: {1!s}</translation>
    </message>
    <message>
      <source>{0}, signature {1}</source>
      <translation>{0}, Unterschrift {1}</translation>
    </message>
    <message>
      <source>{0}, taken as one end to end</source>
      <translation>{0}, als eine gerechnet, von Ende zu Ende</translation>
    </message>
    <message>
      <source>{0}, taken as one end to end, is {1} long and may be {2}.</source>
      <translation>{0}, als eine gerechnet: von Ende zu Ende {1} lang, möglicherweise {2}.</translation>
    </message>
    <message>
      <source>{0}, taken as one end to end, is {1} long, not {2}.</source>
      <translation>{0}, als eine gerechnet: von Ende zu Ende {1} lang, nicht {2}.</translation>
    </message>
    <message>
      <source>{0}, taken as one end to end, is {1} long, {2}.</source>
      <translation>{0}, als eine gerechnet: von Ende zu Ende {1} lang, {2}.</translation>
    </message>
    <message>
      <source>{0}, taken as one end to end, would be {1} long, {2}.</source>
      <translation>{0}, als eine gerechnet, wäre von Ende zu Ende {1} lang, {2}.</translation>
    </message>
    <message>
      <source>{0}, together {1}</source>
      <translation>{0}, zusammen {1}</translation>
    </message>
    <message>
      <source>{0}, whatever the file is called</source>
      <translation>{0}, gleich wie die Datei heißt</translation>
    </message>
    <message>
      <source>{0}, which may be {1}.</source>
      <translation>{0}, möglicherweise {1}.</translation>
    </message>
    <message>
      <source>{0}: a key of so many parts has no meaning</source>
      <translation>{0}: ein Schlüssel aus so vielen Teilen hat keinen Sinn</translation>
    </message>
    <message>
      <source>{0}: photo {1} shows {2} mm, which departs from the size of record (photo {3}) by more than both uncertainties allow (En {4}): look again.</source>
      <translation>{0}: Foto {1} zeigt {2} mm, was von der maßgebenden Größe (Foto {3}) um mehr abweicht, als beide Unsicherheiten erlauben (En {4}): noch einmal ansehen.</translation>
    </message>
    <message>
      <source>{0}: to be filled in from the contract, as every ? is ({1})</source>
      <translation>{0}: nach dem Vertrag auszufüllen, wie jedes ? ({1})</translation>
    </message>
    <message>
      <source>{0}: {1} Reason given: {2}</source>
      <translation>{0}: {1} Angegebener Grund: {2}</translation>
    </message>
    <message>
      <source>{0}: {1} is no text</source>
      <translation>{0}: {1} ist kein Text</translation>
    </message>
    <message>
      <source>{0}: {1} is {2}.</source>
      <translation>{0}: {1} ist {2}.</translation>
    </message>
    <message>
      <source>{0}: {1} of {2} points agree, within {3} px on average.</source>
      <translation>{0}: {1} von {2} Punkten passen, im Mittel auf {3} px.</translation>
    </message>
    <message>
      <source>{0}: {1}, linear if {2} {3}</source>
      <translation>{0}: {1}, linienartig wenn {2} {3}</translation>
    </message>
    <message>
      <source>{0}: {1}; now {2}; {3}.</source>
      <translation>{0}: {1}; jetzt {2}; {3}.</translation>
    </message>
    <message>
      <source>{0}; a relevant linear indication is {1}.</source>
      <translation>{0}; eine relevante linienartige Anzeige ist {1}.</translation>
    </message>
    <message>
      <source>{0}; a relevant rounded indication is {1}.</source>
      <translation>{0}; eine relevante nicht linienartige Anzeige ist {1}.</translation>
    </message>
    <message>
      <source>{0}; it shows no indication and is kept as a picture only.</source>
      <translation>{0}; es zeigt keine Anzeige und ist nur als Bild aufbewahrt.</translation>
    </message>
    <message>
      <source>{0}; the procedure governs</source>
      <translation>{0}; das Verfahren ist maßgebend</translation>
    </message>
    <message>
      <source>{0}; the sizes of its indications come from other photos.</source>
      <translation>{0}; die Größen seiner Anzeigen kommen aus anderen Fotos.</translation>
    </message>
    <message>
      <source>{0}; {1} indication is {2}.</source>
      <translation>{0}; {1} Anzeige ist {2}.</translation>
    </message>
    <message>
      <source>{0}; {1} would be {2}.</source>
      <translation>{0}; {1} wäre {2}.</translation>
    </message>
    <message>
      <source>{0}from here on the file is larger than {1} kB, so it is no profile</source>
      <translation>{0}von hier an ist die Datei größer als {1} kB, also kein Profil</translation>
    </message>
    <message>
      <source>{0}indication {1}</source>
      <translation>{0}Anzeige {1}</translation>
    </message>
    <message>
      <source>{0}is not valid TOML: {1}</source>
      <translation>{0}ist kein gültiges TOML: {1}</translation>
    </message>
    <message>
      <source>{0}{1} times as long as wide</source>
      <translation>{0}{1}-mal so lang wie breit</translation>
    </message>
    <message>
      <source>≥: it ends at the photo's edge, so this is the least it can be.</source>
      <translation>≥: endet am Rand des Fotos; dies ist das Mindeste, was es sein kann.</translation>
    </message>
    <message>
      <source>≥: it lies on overexposed developer, so this is the least it can be.</source>
      <translation>≥: sie liegt auf überbelichtetem Entwickler, daher ist dies das Mindeste.</translation>
    </message>
    <message>
      <source>≥: its ends may not show in haze, rust, grain, a red reflection, beside paint or where the file lost its colour, so this is the least it can be.</source>
      <translation>≥: ihre Enden sind in Schleier, Rost, Rauschen, einem roten Widerschein, neben Lack oder wo die Datei ihre Farbe verloren hat vielleicht nicht zu sehen, daher ist dies das Mindeste.</translation>
    </message>
    <message>
      <source>≥: something may cover an end of it, so this is the least it can be.</source>
      <translation>≥: etwas kann ein Ende von ihr verdecken, daher ist dies das Mindeste.</translation>
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
