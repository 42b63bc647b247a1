package io.github.roundstar.dialects;

import java.text.Normalizer;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A language in which an invented log is written, with its words.
 *
 * <p>Each word has a key and one or more synonyms; the first is the plainest. Words are those of
 * general dictionaries and of the trade. {@link #GREEK} writes English with the signs alpha and
 * delta. In sentences, {@code {r}}, {@code {d}} and the like stand for what the log fills in.
 */
enum Tongue {
  ENGLISH(
      """
      ra: ra | right ascension | r.a. | RA axis
      dec: dec | declination | decl | Dec axis
      offset: offset | error | deviation | displacement | residual | off | err | dev | miss
      pulse: pulse | correction | nudge | push | move command | corr | cmd
      way: way | heading | towards | side
      east: east | E
      west: west | W
      north: north | N
      south: south | S
      time: time | clock | timestamp | when
      date: date | day
      elapsed: elapsed | seconds | since start | t
      frame: frame | image | no | index | shot
      snr: snr | signal to noise | s/n
      flux: flux | brightness | light | counts
      peak: peak | max pixel | brightest pixel
      fwhm: fwhm | star width | half width
      rms: rms | running rms | scatter
      mean: mean | running mean | average
      sum: sum | running sum | total pulses
      total: distance | total | radius | total error
      place: place | position | star position | centroid
      mark: mark | set point | wanted place | target place
      smooth: smoothed | filtered
      copy: copy | again
      camera: camera | raw | chip
      temperature: temperature | temp | sensor temp
      state: state | status | flag
      note: note | remark | event
      run: run | part | session
      exposure: exposure | exposure time | exp
      arcsec: arcsec | arcseconds | asec | as
      pixel: px | pixel | pix | pixels
      ms: ms | msec | milliseconds
      s: s | sec | seconds
      ok: ok | guiding | good
      dither: dither | dithered, new mark | dither step
      settling: settling | waiting until quiet | calming down
      settled: settled | quiet again
      lost: star lost | no star | star gone
      found: star found | star is back | star recovered
      flip: meridian flip | mount turned over
      start: run {n} starts | start of run {n} | session {n} begins
      end: run {n} ends | end of run {n} | stopped
      scale: scale | image scale | guide scale | plate scale
      focal: focal length | guide scope focal length
      pixelsize: pixel size | camera pixel
      exposureset: exposure | guide exposure | exposure time
      declination: declination | target declination | pointing declination
      pier: pier side | side of pier
      rate: guide rate | correction rate
      gain: RA strength | RA gain
      zone: time zone | clock is
      title: Notes of the guider | Guiding diary | Record of the night
      place.name: Hollow Lane shed | East Marsh garden | roof at number nine
      months: Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec
      longmonths: January February March April May June July August September October November December
      s.sign: Offsets are star minus mark, {r} and {d} positive. | Sign: positive means the star is {r} / {d} of its mark. | {r} and {d} count as positive.
      s.reverse: Offsets are mark minus star; a positive figure says that the star is {r} / {d} of its mark.
      s.mount: A positive correction pushes the mount {r} / {d}. | Corrections: plus = mount moves {r}, in declination {d}.
      s.star: A positive correction pushes the star {r} / {d} on the sky.
      s.letters: Letters: {E} = {east}, {W} = {west}, {N} = {north}, {S} = {south}; the way the mount is pushed.
      s.unit: All offsets in {u}, corrections in {p}. | Units: {u} for angles, {p} for corrections.
      s.axes: The first figure of a pair is right ascension, the second declination.
      s.missing: {m} means: not measured. | {m} stands for a missing measurement.
      s.next: The corrections in a line were sent before its frame. | Corrections belong to the frame above.
      s.cadence: One frame every {c} seconds without a pause.
      s.rotation: The camera is turned by {a} degrees: RA = x cos a + y sin a, Dec = y cos a - x sin a.
      s.codes: {k}: 0 = measured, 1 = settling, 2 = star lost, 3 = first frame after a dither
      s.flagletters: {k}: m = measured, s = settling, x = star lost, d = first frame after a dither
      s.scale: The guide camera sees {v} arcsec per pixel.
      s.rate: Corrections run at {v} times sidereal rate.
      s.exposure: Each frame was exposed for {v} s.
      s.declination: The telescope stood at declination {v} degrees.
      s.dateorder: Dates are {o}.
      s.setpoint: The mark is at x = {x}, y = {y}; x runs along right ascension to the {r}, y along declination to the {d}.
      s.xy: x runs along right ascension to the {r}, y along declination to the {d}.
      s.camera: camera x along RA, y along Dec
      mean.line: mean {a} {b} | average {a} / {b}
      rms.line: rms {a} {b} | scatter {a} / {b}
      frames.line: {n} frames, {m} without a star
      columns: columns | fields
      focuser: focuser | focus motor
      dew: dew heater | dew strap
      section.settings: settings | setup
      section.frames: frames | measurements
      began: started | log begins
      star: star | seen
      remarks: a gust from the west | thin cloud coming in | fox in the garden, tripod touched? | lens cap of the finder was on
      section.end: summary | end of night
      """),
  GERMAN(
      """
      ra: RA | Rektaszension | Rekt | Stundenachse
      dec: Dek | Deklination | Dekl | DE
      offset: Abweichung | Fehler | Ablage | Versatz | Abw
      pulse: Korrektur | Impuls | Stellimpuls | Puls | Korr
      way: Richtung | nach | Seite
      east: Ost | O
      west: West | W
      north: Nord | N
      south: Süd | S
      time: Zeit | Uhrzeit | Zeitpunkt
      date: Datum | Tag
      elapsed: Laufzeit | Sekunden | seit Beginn
      frame: Bild | Aufnahme | Nr | Lfd
      snr: Rauschabstand | Signal/Rauschen | SRV
      flux: Helligkeit | Fluss | Lichtsumme
      peak: Spitze | Höchstwert | hellstes Pixel
      fwhm: Halbwertsbreite | HWB
      rms: Streuung | mittlerer Fehler | RMS
      mean: Mittel | Mittelwert | laufendes Mittel
      sum: Summe | Impulssumme | laufende Summe
      total: Abstand | Gesamtabweichung | gesamt
      place: Ort | Position | Sternort
      mark: Soll | Sollort | Sollposition
      smooth: geglättet | gefiltert
      copy: nochmals | Kopie
      camera: Kamera | roh | Chip
      temperature: Temperatur | Temp | Kameratemperatur
      state: Zustand | Status | Kennung
      note: Bemerkung | Ereignis | Hinweis
      run: Lauf | Abschnitt | Serie
      exposure: Belichtung | Belichtungszeit
      arcsec: Bogensekunden | Bogensek | Bsek | "
      pixel: Pixel | Px | Bildpunkte
      ms: ms | Millisekunden | Millisek
      s: s | Sek | Sekunden
      ok: ok | geführt | gut
      dither: Dither | versetzt, neuer Sollort | Versatzschritt
      settling: Beruhigung | wartet auf Ruhe | beruhigt sich
      settled: wieder ruhig | beruhigt
      lost: Stern verloren | kein Stern | Stern weg
      found: Stern wieder da | Stern gefunden
      flip: Meridianwechsel | Montierung umgeschlagen
      start: Lauf {n} beginnt | Beginn Lauf {n} | Abschnitt {n}: Start
      end: Lauf {n} endet | Ende Lauf {n} | angehalten
      scale: Maßstab | Abbildungsmaßstab | Bildmaßstab
      focal: Brennweite | Brennweite Leitrohr
      pixelsize: Pixelgröße | Pixelkante
      exposureset: Belichtung | Belichtungszeit
      declination: Deklination | Deklination des Ziels
      pier: Säulenseite | Seite der Säule
      rate: Korrekturgeschwindigkeit | Führungsrate
      gain: Stärke RA | Verstärkung RA
      zone: Zeitzone | Uhr geht nach
      title: Protokoll der Nachführung | Leitrohr-Tagebuch | Mitschrift der Nacht
      place.name: Garten Birkenhöhe | Hütte am Mühlweg | Dachstuhl Nord
      months: Jan Feb Mär Apr Mai Jun Jul Aug Sep Okt Nov Dez
      longmonths: Januar Februar März April Mai Juni Juli August September Oktober November Dezember
      s.sign: Abweichung = Stern minus Sollort, {r} und {d} positiv. | Vorzeichen: positiv heißt, der Stern steht {r} / {d} vom Sollort. | {r} und {d} zählen positiv.
      s.reverse: Abweichung = Sollort minus Stern; ein positiver Wert heißt, der Stern steht {r} / {d} vom Sollort.
      s.mount: Eine positive Korrektur schiebt die Montierung nach {r} / {d}. | Korrekturen: plus = Montierung nach {r}, in Deklination nach {d}.
      s.star: Eine positive Korrektur schiebt den Stern nach {r} / {d}.
      s.letters: Buchstaben: {E} = {east}, {W} = {west}, {N} = {north}, {S} = {south}; dorthin wird die Montierung geschoben.
      s.unit: Alle Abweichungen in {u}, Korrekturen in {p}. | Einheiten: {u} für Winkel, {p} für Korrekturen.
      s.axes: Die erste Zahl eines Paares ist Rektaszension, die zweite Deklination.
      s.missing: {m} bedeutet: nicht gemessen. | {m} steht für eine fehlende Messung.
      s.next: Die Korrekturen einer Zeile wurden vor ihrem Bild gesendet. | Korrekturen gehören zum Bild darüber.
      s.cadence: Ein Bild alle {c} Sekunden, ohne Pause.
      s.rotation: Die Kamera ist um {a} Grad gedreht: RA = x cos a + y sin a, Dek = y cos a - x sin a.
      s.codes: {k}: 0 = gemessen, 1 = Beruhigung, 2 = Stern verloren, 3 = erstes Bild nach einem Dither
      s.flagletters: {k}: m = gemessen, b = Beruhigung, x = Stern verloren, d = erstes Bild nach einem Dither
      s.scale: Die Leitkamera sieht {v} Bogensekunden je Pixel.
      s.rate: Korrigiert wird mit der {v}-fachen siderischen Geschwindigkeit.
      s.exposure: Jedes Bild wurde {v} s belichtet.
      s.declination: Das Fernrohr stand bei Deklination {v} Grad.
      s.dateorder: Datum in der Folge {o}.
      s.setpoint: Der Sollort ist x = {x}, y = {y}; x läuft längs Rektaszension nach {r}, y längs Deklination nach {d}.
      s.xy: x läuft längs Rektaszension nach {r}, y längs Deklination nach {d}.
      s.camera: Kamera-x längs RA, y längs Dek
      mean.line: Mittel {a} {b} | im Mittel {a} / {b}
      rms.line: Streuung {a} {b} | mittlerer Fehler {a} / {b}
      frames.line: {n} Bilder, davon {m} ohne Stern
      columns: Spalten | Felder
      focuser: Fokussierer | Okularauszug
      dew: Tauheizung | Taukappe
      section.settings: Einstellungen | Aufbau
      section.frames: Bilder | Messungen
      began: Beginn | Anfang
      star: Stern | gesehen
      remarks: Böe aus West | dünne Wolken ziehen auf | Fuchs im Garten, Stativ berührt? | Sucherdeckel war noch drauf
      section.end: Zusammenfassung | Ende der Nacht
      """),
  FRENCH(
      """
      ra: AD | ascension droite | asc. droite | alpha
      dec: déc | déclinaison | décl
      offset: écart | erreur | déviation | décalage
      pulse: correction | impulsion | rappel | corr
      way: sens | vers | côté
      east: est | E
      west: ouest | O
      north: nord | N
      south: sud | S
      time: heure | temps | instant
      date: date | jour
      elapsed: durée | secondes | temps écoulé
      frame: pose | image | vue | no
      snr: signal sur bruit | S/B | RSB
      flux: flux | éclat | lumière
      peak: pic | maximum | pixel le plus brillant
      fwhm: largeur à mi-hauteur | LMH
      rms: dispersion | écart quadratique | RMS
      mean: moyenne | moyenne glissante
      sum: somme | cumul
      total: distance | écart total | total
      place: position | place | centre
      mark: consigne | repère | position voulue
      smooth: lissé | filtré
      copy: copie | encore
      camera: caméra | brut | capteur
      temperature: température | temp | temp. capteur
      state: état | statut | indicateur
      note: remarque | événement | note
      run: série | suivi | séance
      exposure: exposition | temps de pose
      arcsec: secondes d'arc | sec d'arc | arcsec | sa
      pixel: pixels | px | pix
      ms: ms | millisecondes
      s: s | sec | secondes
      ok: ok | suivi | bon
      dither: décalage voulu | dither | nouveau repère
      settling: stabilisation | attente du calme
      settled: stabilisé | de nouveau calme
      lost: étoile perdue | pas d'étoile
      found: étoile retrouvée | étoile revenue
      flip: retournement au méridien | monture retournée
      start: début de la série {n} | série {n} : début
      end: fin de la série {n} | série {n} : arrêt
      scale: échelle | échantillonnage | échelle d'image
      focal: focale | longueur focale
      pixelsize: taille du pixel | pixel de la caméra
      exposureset: pose | temps de pose
      declination: déclinaison | déclinaison de la cible
      pier: côté du pilier | côté pilier
      rate: vitesse de correction | vitesse de rappel
      gain: force AD | gain AD
      zone: fuseau horaire | heure
      title: Carnet de guidage | Journal du suivi | Relevé de la nuit
      place.name: jardin des Tilleuls | terrasse du moulin | abri de la côte
      months: janv. févr. mars avr. mai juin juil. août sept. oct. nov. déc.
      longmonths: janvier février mars avril mai juin juillet août septembre octobre novembre décembre
      s.sign: Écart = étoile moins repère, {r} et {d} positifs. | Signe : positif quand l'étoile est à l'{r} / au {d} du repère.
      s.reverse: Écart = repère moins étoile ; une valeur positive dit que l'étoile est à l'{r} / au {d} du repère.
      s.mount: Une correction positive pousse la monture vers l'{r} / le {d}.
      s.star: Une correction positive pousse l'étoile vers l'{r} / le {d}.
      s.letters: Lettres : {E} = {east}, {W} = {west}, {N} = {north}, {S} = {south} ; sens de la poussée sur la monture.
      s.unit: Écarts en {u}, corrections en {p}. | Unités : {u} pour les angles, {p} pour les corrections.
      s.axes: Le premier nombre d'une paire est l'ascension droite, le second la déclinaison.
      s.missing: {m} signifie : non mesuré. | {m} remplace une mesure absente.
      s.next: Les corrections d'une ligne ont été envoyées avant sa pose.
      s.cadence: Une pose toutes les {c} secondes, sans arrêt.
      s.rotation: La caméra est tournée de {a} degrés : AD = x cos a + y sin a, déc = y cos a - x sin a.
      s.codes: {k} : 0 = mesuré, 1 = stabilisation, 2 = étoile perdue, 3 = première pose après un décalage voulu
      s.flagletters: {k} : m = mesuré, s = stabilisation, x = étoile perdue, d = première pose après un décalage voulu
      s.scale: La caméra de guidage voit {v} secondes d'arc par pixel.
      s.rate: Les corrections se font à {v} fois la vitesse sidérale.
      s.exposure: Chaque pose dure {v} s.
      s.declination: La lunette visait la déclinaison {v} degrés.
      s.dateorder: Dates en {o}.
      s.setpoint: Le repère est en x = {x}, y = {y} ; x suit l'ascension droite vers l'{r}, y la déclinaison vers le {d}.
      s.xy: x suit l'ascension droite vers l'{r}, y la déclinaison vers le {d}.
      s.camera: x de la caméra le long de l'AD, y de la déclinaison
      mean.line: moyenne {a} {b} | en moyenne {a} / {b}
      rms.line: dispersion {a} {b} | écart quadratique {a} / {b}
      frames.line: {n} poses dont {m} sans étoile
      columns: colonnes | champs
      focuser: mise au point | moteur de mise au point
      dew: résistance chauffante | pare-buée
      section.settings: réglages | montage
      section.frames: poses | mesures
      began: début
      star: étoile
      remarks: rafale d'ouest | voile de nuages | un chat sur la terrasse | bouchon du chercheur oublié
      section.end: bilan | fin de nuit
      """),
  SPANISH(
      """
      ra: AR | ascensión recta | asc. recta
      dec: dec | declinación | decl
      offset: desviación | error | desvío | desplazamiento
      pulse: corrección | pulso | impulso | corr
      way: sentido | hacia | lado
      east: este | E
      west: oeste | O
      north: norte | N
      south: sur | S
      time: hora | tiempo | instante
      date: fecha | día
      elapsed: transcurrido | segundos | desde el inicio
      frame: toma | imagen | núm
      snr: señal a ruido | S/R
      flux: flujo | brillo | luz
      peak: pico | máximo
      fwhm: anchura | ancho a media altura
      rms: dispersión | error cuadrático | RMS
      mean: media | promedio
      sum: suma | acumulado
      total: distancia | total | desviación total
      place: posición | lugar | centro
      mark: consigna | referencia | posición deseada
      smooth: suavizado | filtrado
      copy: copia | otra vez
      camera: cámara | crudo | sensor
      temperature: temperatura | temp
      state: estado | situación
      note: nota | suceso | observación
      run: serie | tramo | sesión
      exposure: exposición | tiempo de exposición
      arcsec: segundos de arco | seg arco | arcseg | arcsec
      pixel: píxeles | px | pix
      ms: ms | milisegundos
      s: s | seg | segundos
      ok: ok | guiando | bien
      dither: desplazamiento voluntario | dither | nueva referencia
      settling: estabilizando | esperando calma
      settled: estabilizado | en calma otra vez
      lost: estrella perdida | sin estrella
      found: estrella recuperada | estrella de nuevo
      flip: giro de meridiano | montura volteada
      start: empieza la serie {n} | inicio de la serie {n}
      end: acaba la serie {n} | fin de la serie {n}
      scale: escala | escala de imagen
      focal: focal | distancia focal
      pixelsize: tamaño de píxel | píxel de la cámara
      exposureset: exposición | tiempo de exposición
      declination: declinación | declinación del objeto
      pier: lado del pilar | lado de la columna
      rate: velocidad de corrección | velocidad de guiado
      gain: fuerza AR | ganancia AR
      zone: huso horario | zona horaria
      title: Cuaderno de guiado | Diario de seguimiento | Registro de la noche
      place.name: patio de los Almendros | azotea del molino | caseta de la peña
      months: ene feb mar abr may jun jul ago sep oct nov dic
      longmonths: enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre
      s.sign: Desviación = estrella menos referencia; {r} y {d} positivos. | Signo: positivo si la estrella está al {r} / {d} de la referencia.
      s.reverse: Desviación = referencia menos estrella; un valor positivo dice que la estrella está al {r} / {d} de la referencia.
      s.mount: Una corrección positiva empuja la montura hacia el {r} / {d}.
      s.star: Una corrección positiva empuja la estrella hacia el {r} / {d}.
      s.letters: Letras: {E} = {east}, {W} = {west}, {N} = {north}, {S} = {south}; hacia donde se empuja la montura.
      s.unit: Desviaciones en {u}, correcciones en {p}. | Unidades: {u} para ángulos, {p} para correcciones.
      s.axes: El primer número de cada par es la ascensión recta, el segundo la declinación.
      s.missing: {m} significa: sin medida. | {m} indica una medida que falta.
      s.next: Las correcciones de una línea se enviaron antes de su toma.
      s.cadence: Una toma cada {c} segundos, sin pausa.
      s.rotation: La cámara está girada {a} grados: AR = x cos a + y sen a, dec = y cos a - x sen a.
      s.codes: {k}: 0 = medido, 1 = estabilizando, 2 = estrella perdida, 3 = primera toma tras un desplazamiento voluntario
      s.flagletters: {k}: m = medido, e = estabilizando, x = estrella perdida, d = primera toma tras un desplazamiento voluntario
      s.scale: La cámara guía ve {v} segundos de arco por píxel.
      s.rate: Las correcciones van a {v} veces la velocidad sidérea.
      s.exposure: Cada toma se expuso {v} s.
      s.declination: El telescopio estaba a declinación {v} grados.
      s.dateorder: Fechas en {o}.
      s.setpoint: La referencia está en x = {x}, y = {y}; x va por la ascensión recta hacia el {r}, y por la declinación hacia el {d}.
      s.xy: x va por la ascensión recta hacia el {r}, y por la declinación hacia el {d}.
      s.camera: x de la cámara según AR, y según declinación
      mean.line: media {a} {b} | promedio {a} / {b}
      rms.line: dispersión {a} {b} | error cuadrático {a} / {b}
      frames.line: {n} tomas, {m} sin estrella
      columns: columnas | campos
      focuser: enfocador | motor de enfoque
      dew: cinta calefactora | antivaho
      section.settings: ajustes | montaje
      section.frames: tomas | medidas
      began: inicio
      star: estrella
      remarks: racha del oeste | nubes finas | un gato en el patio | tapa del buscador puesta
      section.end: resumen | fin de la noche
      """),
  ITALIAN(
      """
      ra: AR | ascensione retta | asc. retta
      dec: dec | declinazione | decl
      offset: scarto | errore | deviazione | scostamento
      pulse: correzione | impulso | spinta | corr
      way: verso | direzione | lato
      east: est | E
      west: ovest | O
      north: nord | N
      south: sud | S
      time: ora | orario | istante
      date: data | giorno
      elapsed: trascorso | secondi | dall'inizio
      frame: posa | immagine | num
      snr: segnale su rumore | S/R
      flux: flusso | luminosità | luce
      peak: picco | massimo
      fwhm: larghezza | larghezza a metà altezza
      rms: dispersione | errore quadratico | RMS
      mean: media | media mobile
      sum: somma | totale impulsi
      total: distanza | totale | scarto totale
      place: posizione | posto | centroide
      mark: riferimento | posizione voluta | bersaglio
      smooth: lisciato | filtrato
      copy: copia | ripetuto
      camera: camera | grezzo | sensore
      temperature: temperatura | temp
      state: stato | condizione
      note: nota | evento | avviso
      run: serie | sessione | tratto
      exposure: esposizione | tempo di posa
      arcsec: secondi d'arco | sec arco | arcsec
      pixel: pixel | px
      ms: ms | millisecondi
      s: s | sec | secondi
      ok: ok | in guida | bene
      dither: spostamento voluto | dither | nuovo riferimento
      settling: assestamento | attesa di quiete
      settled: assestato | di nuovo fermo
      lost: stella persa | nessuna stella
      found: stella ritrovata | stella tornata
      flip: inversione al meridiano | montatura ribaltata
      start: inizio serie {n} | serie {n}: inizio
      end: fine serie {n} | serie {n}: fermata
      scale: scala | campionamento | scala immagine
      focal: focale | lunghezza focale
      pixelsize: dimensione pixel | lato del pixel
      exposureset: esposizione | posa
      declination: declinazione | declinazione del soggetto
      pier: lato della colonna | lato pilastro
      rate: velocità di correzione | velocità di guida
      gain: forza AR | guadagno AR
      zone: fuso orario | fuso
      title: Quaderno di guida | Diario dell'inseguimento | Registro della notte
      place.name: orto dei Gelsi | terrazza del mulino | capanno della rupe
      months: gen feb mar apr mag giu lug ago set ott nov dic
      longmonths: gennaio febbraio marzo aprile maggio giugno luglio agosto settembre ottobre novembre dicembre
      s.sign: Scarto = stella meno riferimento, {r} e {d} positivi. | Segno: positivo se la stella sta a {r} / {d} del riferimento.
      s.reverse: Scarto = riferimento meno stella; un valore positivo dice che la stella sta a {r} / {d} del riferimento.
      s.mount: Una correzione positiva spinge la montatura verso {r} / {d}.
      s.star: Una correzione positiva spinge la stella verso {r} / {d}.
      s.letters: Lettere: {E} = {east}, {W} = {west}, {N} = {north}, {S} = {south}; verso in cui si spinge la montatura.
      s.unit: Scarti in {u}, correzioni in {p}. | Unità: {u} per gli angoli, {p} per le correzioni.
      s.axes: Il primo numero di ogni coppia è l'ascensione retta, il secondo la declinazione.
      s.missing: {m} significa: non misurato. | {m} sta per una misura mancante.
      s.next: Le correzioni di una riga sono state inviate prima della sua posa.
      s.cadence: Una posa ogni {c} secondi, senza pause.
      s.rotation: La camera è ruotata di {a} gradi: AR = x cos a + y sen a, dec = y cos a - x sen a.
      s.codes: {k}: 0 = misurato, 1 = assestamento, 2 = stella persa, 3 = prima posa dopo uno spostamento voluto
      s.flagletters: {k}: m = misurato, a = assestamento, x = stella persa, d = prima posa dopo uno spostamento voluto
      s.scale: La camera di guida vede {v} secondi d'arco per pixel.
      s.rate: Le correzioni vanno a {v} volte la velocità siderea.
      s.exposure: Ogni posa dura {v} s.
      s.declination: Il telescopio stava a declinazione {v} gradi.
      s.dateorder: Date in {o}.
      s.setpoint: Il riferimento è x = {x}, y = {y}; x corre lungo l'ascensione retta verso {r}, y lungo la declinazione verso {d}.
      s.xy: x corre lungo l'ascensione retta verso {r}, y lungo la declinazione verso {d}.
      s.camera: x della camera lungo AR, y lungo la declinazione
      mean.line: media {a} {b} | in media {a} / {b}
      rms.line: dispersione {a} {b} | errore quadratico {a} / {b}
      frames.line: {n} pose, {m} senza stella
      columns: colonne | campi
      focuser: focheggiatore | motore del fuoco
      dew: fascia anticondensa | paracondensa
      section.settings: impostazioni | montaggio
      section.frames: pose | misure
      began: inizio
      star: stella
      remarks: folata da ovest | velature in arrivo | un gatto in terrazza | tappo del cercatore dimenticato
      section.end: riepilogo | fine notte
      """),
  PORTUGUESE(
      """
      ra: AR | ascensão reta | asc. reta
      dec: dec | declinação | decl
      offset: desvio | erro | afastamento | deslocamento
      pulse: correção | pulso | impulso | corr
      way: sentido | direção | lado
      east: leste | L
      west: oeste | O
      north: norte | N
      south: sul | S
      time: hora | tempo | instante
      date: data | dia
      elapsed: decorrido | segundos | desde o início
      frame: quadro | imagem | núm
      snr: sinal ruído | S/R
      flux: fluxo | brilho | luz
      peak: pico | máximo
      fwhm: largura | largura a meia altura
      rms: dispersão | erro quadrático | RMS
      mean: média | média móvel
      sum: soma | acumulado
      total: distância | total | desvio total
      place: posição | lugar | centro
      mark: referência | alvo | posição desejada
      smooth: suavizado | filtrado
      copy: cópia | de novo
      camera: câmara | bruto | sensor
      temperature: temperatura | temp
      state: estado | situação
      note: nota | evento | observação
      run: série | sessão | trecho
      exposure: exposição | tempo de exposição
      arcsec: segundos de arco | seg arco | arcseg | arcsec
      pixel: pixels | px
      ms: ms | milissegundos
      s: s | seg | segundos
      ok: ok | guiando | bom
      dither: deslocamento voluntário | dither | nova referência
      settling: estabilizando | à espera de calma
      settled: estabilizado | calmo de novo
      lost: estrela perdida | sem estrela
      found: estrela reencontrada | estrela voltou
      flip: inversão no meridiano | montagem virada
      start: começa a série {n} | início da série {n}
      end: termina a série {n} | fim da série {n}
      scale: escala | escala de imagem
      focal: distância focal | focal
      pixelsize: tamanho do pixel | lado do pixel
      exposureset: exposição | tempo de exposição
      declination: declinação | declinação do alvo
      pier: lado do pilar | lado da coluna
      rate: velocidade de correção | velocidade de guiagem
      gain: força AR | ganho AR
      zone: fuso horário | fuso
      title: Caderno de guiagem | Diário do seguimento | Registo da noite
      place.name: quintal das Amoreiras | terraço do moinho | abrigo da serra
      months: jan fev mar abr mai jun jul ago set out nov dez
      longmonths: janeiro fevereiro março abril maio junho julho agosto setembro outubro novembro dezembro
      s.sign: Desvio = estrela menos referência, {r} e {d} positivos. | Sinal: positivo se a estrela está a {r} / {d} da referência.
      s.reverse: Desvio = referência menos estrela; um valor positivo diz que a estrela está a {r} / {d} da referência.
      s.mount: Uma correção positiva empurra a montagem para {r} / {d}.
      s.star: Uma correção positiva empurra a estrela para {r} / {d}.
      s.letters: Letras: {E} = {east}, {W} = {west}, {N} = {north}, {S} = {south}; para onde se empurra a montagem.
      s.unit: Desvios em {u}, correções em {p}. | Unidades: {u} para ângulos, {p} para correções.
      s.axes: O primeiro número de cada par é a ascensão reta, o segundo a declinação.
      s.missing: {m} significa: não medido. | {m} indica uma medida em falta.
      s.next: As correções de uma linha foram enviadas antes do seu quadro.
      s.cadence: Um quadro a cada {c} segundos, sem pausa.
      s.rotation: A câmara está rodada {a} graus: AR = x cos a + y sen a, dec = y cos a - x sen a.
      s.codes: {k}: 0 = medido, 1 = estabilizando, 2 = estrela perdida, 3 = primeiro quadro após um deslocamento voluntário
      s.flagletters: {k}: m = medido, e = estabilizando, x = estrela perdida, d = primeiro quadro após um deslocamento voluntário
      s.scale: A câmara guia vê {v} segundos de arco por pixel.
      s.rate: As correções vão a {v} vezes a velocidade sideral.
      s.exposure: Cada quadro foi exposto {v} s.
      s.declination: O telescópio estava à declinação {v} graus.
      s.dateorder: Datas em {o}.
      s.setpoint: A referência está em x = {x}, y = {y}; x corre pela ascensão reta para {r}, y pela declinação para {d}.
      s.xy: x corre pela ascensão reta para {r}, y pela declinação para {d}.
      s.camera: x da câmara segundo AR, y segundo a declinação
      mean.line: média {a} {b} | em média {a} / {b}
      rms.line: dispersão {a} {b} | erro quadrático {a} / {b}
      frames.line: {n} quadros, {m} sem estrela
      columns: colunas | campos
      focuser: focador | motor de foco
      dew: fita de aquecimento | anti-orvalho
      section.settings: ajustes | montagem
      section.frames: quadros | medidas
      began: início
      star: estrela
      remarks: rajada de oeste | nuvens finas | um gato no quintal | tampa do buscador esquecida
      section.end: resumo | fim da noite
      """),
  DUTCH(
      """
      ra: RK | rechte klimming | RA
      dec: dec | declinatie | decl
      offset: afwijking | fout | verschuiving | afstand tot merk
      pulse: correctie | puls | duw | corr
      way: richting | naar | kant
      east: oost | O
      west: west | W
      north: noord | N
      south: zuid | Z
      time: tijd | tijdstip | klok
      date: datum | dag
      elapsed: verstreken | seconden | sinds begin
      frame: beeld | opname | nr
      snr: signaal ruis | S/R
      flux: helderheid | flux | licht
      peak: piek | hoogste waarde
      fwhm: halfwaardebreedte | HWB
      rms: spreiding | kwadratisch gemiddelde | RMS
      mean: gemiddelde | lopend gemiddelde
      sum: som | lopende som
      total: totaal | totale afwijking | straal
      place: plaats | positie | sterplaats
      mark: merk | gewenste plaats | doel
      smooth: afgevlakt | gefilterd
      copy: kopie | nogmaals
      camera: camera | ruw | chip
      temperature: temperatuur | temp
      state: toestand | status | kenmerk
      note: opmerking | gebeurtenis | notitie
      run: reeks | sessie | deel
      exposure: belichting | belichtingstijd
      arcsec: boogseconden | boogsec | bsec | arcsec
      pixel: pixels | px | beeldpunten
      ms: ms | milliseconden
      s: s | sec | seconden
      ok: ok | volgt | goed
      dither: dither | verzet, nieuw merk
      settling: tot rust komen | wacht op rust
      settled: weer rustig | tot rust
      lost: ster kwijt | geen ster
      found: ster terug | ster gevonden
      flip: meridiaanwissel | montering omgeslagen
      start: begin reeks {n} | reeks {n} begint
      end: einde reeks {n} | reeks {n} stopt
      scale: schaal | beeldschaal
      focal: brandpuntsafstand | brandpunt volgkijker
      pixelsize: pixelmaat | pixelgrootte
      exposureset: belichting | belichtingstijd
      declination: declinatie | declinatie van het doel
      pier: kant van de zuil | zuilkant
      rate: correctiesnelheid | volgsnelheid correctie
      gain: sterkte RK | versterking RK
      zone: tijdzone | klok loopt op
      title: Logboek van het volgen | Volgdagboek | Verslag van de nacht
      place.name: tuin aan de Molenweg | schuur Oosterveld | dakterras noord
      months: jan feb mrt apr mei jun jul aug sep okt nov dec
      longmonths: januari februari maart april mei juni juli augustus september oktober november december
      s.sign: Afwijking = ster min merk, {r} en {d} positief. | Teken: positief als de ster {r} / {d} van het merk staat.
      s.reverse: Afwijking = merk min ster; een positief getal zegt dat de ster {r} / {d} van het merk staat.
      s.mount: Een positieve correctie duwt de montering naar {r} / {d}.
      s.star: Een positieve correctie duwt de ster naar {r} / {d}.
      s.letters: Letters: {E} = {east}, {W} = {west}, {N} = {north}, {S} = {south}; daarheen wordt de montering geduwd.
      s.unit: Afwijkingen in {u}, correcties in {p}. | Eenheden: {u} voor hoeken, {p} voor correcties.
      s.axes: Het eerste getal van een paar is rechte klimming, het tweede declinatie.
      s.missing: {m} betekent: niet gemeten. | {m} staat voor een ontbrekende meting.
      s.next: De correcties op een regel zijn voor het beeld van die regel verstuurd.
      s.cadence: Elke {c} seconden een beeld, zonder pauze.
      s.rotation: De camera is {a} graden gedraaid: RK = x cos a + y sin a, dec = y cos a - x sin a.
      s.codes: {k}: 0 = gemeten, 1 = tot rust komen, 2 = ster kwijt, 3 = eerste beeld na een dither
      s.flagletters: {k}: m = gemeten, r = tot rust komen, x = ster kwijt, d = eerste beeld na een dither
      s.scale: De volgcamera ziet {v} boogseconden per pixel.
      s.rate: Correcties gaan met {v} maal de siderische snelheid.
      s.exposure: Elk beeld is {v} s belicht.
      s.declination: De kijker stond op declinatie {v} graden.
      s.dateorder: Datums als {o}.
      s.setpoint: Het merk ligt op x = {x}, y = {y}; x loopt langs rechte klimming naar {r}, y langs declinatie naar {d}.
      s.xy: x loopt langs rechte klimming naar {r}, y langs declinatie naar {d}.
      s.camera: camera-x langs RK, y langs dec
      mean.line: gemiddelde {a} {b} | gemiddeld {a} / {b}
      rms.line: spreiding {a} {b}
      frames.line: {n} beelden, {m} zonder ster
      columns: kolommen | velden
      focuser: focusser | scherpstelmotor
      dew: dauwlint | dauwverwarming
      section.settings: instellingen | opstelling
      section.frames: beelden | metingen
      began: begin
      star: ster
      remarks: windvlaag uit het westen | dunne bewolking | kat in de tuin | dop zat nog op de zoeker
      section.end: samenvatting | einde van de nacht
      """),
  GREEK(
      """
      ra: α
      dec: δ
      offset: Δ | offset | residual | error
      pulse: corr | pulse | push
      """);

  private final Map<String, List<String>> words = new HashMap<>();

  Tongue(String block) {
    for (String line : block.split("\n")) {
      int colon = line.indexOf(": ");
      words.put(line.substring(0, colon), List.of(line.substring(colon + 2).split(" \\| ")));
    }
  }

  /** Synonyms for a key, the plainest first; English words where the tongue has none of its own. */
  List<String> words(String key) {
    List<String> found = words.get(key);
    if (found == null && this != ENGLISH) {
      return ENGLISH.words(key);
    }
    if (found == null) {
      throw new IllegalArgumentException("no word for " + key);
    }
    return found;
  }

  /** The letters E, W, N, S as this tongue abbreviates the four directions. */
  String letter(Way way) {
    return words(way.key).get(1);
  }

  /** The word for a direction. */
  String word(Way way) {
    return words(way.key).get(0);
  }

  /** Text with its accents taken off as people do who type on a plain keyboard. */
  String plain(String text) {
    String t = text;
    if (this == GERMAN) {
      t = t.replace("ä", "ae").replace("ö", "oe").replace("ü", "ue").replace("ß", "ss");
    }
    return Normalizer.normalize(t, Normalizer.Form.NFD)
        .replaceAll("\\p{InCombiningDiacriticalMarks}", "");
  }

  /** One of the four directions on the sky. */
  enum Way {
    EAST("east"),
    WEST("west"),
    NORTH("north"),
    SOUTH("south");

    final String key;

    Way(String key) {
      this.key = key;
    }
  }
}
