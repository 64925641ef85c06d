"""The sentences of the coach, keyed by finding code, and the numbers in them as people read them.

Severity and step stand beside the sentence where they are always the same.
"""

from collections.abc import Sequence

from model.units import Unit, format_length, format_mass

SENTENCES: dict[str, str] = {
    "frame.bars-none": "There is no frame yet: add bars, or start from a ready-made frame.",
    "frame.end-loose": "{bar} ends at {joint} with nothing on its end: put a cap on it, or join another bar to it.",
    "frame.groups-apart": "The frame is in {count} pieces that do not touch: {joints} hang apart from the rest.",
    "frame.joints-close": "{a} and {b} are {spacing} apart, but their fittings need {least}: move them {short} further apart.",
    "frame.joints-together": "{a} and {b} are in the same place: move one of their planes.",
    "frame.bar-crooked": "{bar} runs neither straight nor at 45 degrees, so no fitting can hold it.",
    "frame.bars-overlap": "{a} and {b} lie in the same line and overlap: end one where the other begins.",
    "frame.sawn-short": "{bar} is sawn to {sawn}, but {least} go into its two fittings: it needs a longer piece.",
    "frame.sawn-misfit": "{bar} is sawn to {sawn}, but should be {needed} there, {off} off: {others} are sawn too and hold the same planes.",
    "frame.plane-held": "{plane} is drawn {drawn}, but sawn pieces hold it {held}.",
    "frame.piece-slips": "{bar} is only {cut} long, and a socket at its end is {depth} deep: the piece can slip in whole.",
    "fitting.joint-unmatched": "No fitting in the stock fits {joint}, where bars leave {ways}.",
    "fitting.pick-wrong": "The {fitting} picked for {joint} does not fit there: bars leave {ways}.",
    "fitting.socket-spare": "The {fitting} at {joint} has an empty socket {ways}: it sticks out, and lets water in.",
    "stock.bar-long": "{bar} needs {cut} of pipe, but the longest on sale is {longest}.",
    "stock.stick-short": "When {piece} is sawn off the {stick} stick, only {held} of it is left to hold; under {least} is too short.",
    "stock.box-short": "The box is all there is, but it lacks {missing}.",
    "stock.measure-wrong": "{why}.",
    "stock.push-deep": "{pipe} is set to go {push} into each fitting, but the socket of {fitting} is only {depth} deep: cuts count {depth} there.",
    "material.pipe-disallowed": "{pipe} is {material}, but the brief allows only {allowed}.",
    "size.limit-over": "The vehicle is {size} {axis}, {over} over the limit of {limit}: {high} sticks out {high_side} and {low} {low_side}.",
    "size.limit-near": "The {size} is {room} inside its limit of {limit}, but the build may come out {rss} off ({worst} at worst): it is over with a chance of {chance}.",
    "size.hoop-tight": "The hoop is {limit} wide, but the vehicle needs {size}: {over} more than there is.",
    "size.gate-tight": "The gate is {limit} {way}, but the vehicle is {size}: {over} more than there is.",
    "place.solids-shared": "{a} is in the same place as {b}.",
    "place.part-shared": "{a} is in the same place as {b}, as far as its outside measures tell.",
    "place.foam-squeezed": "{a} is in the same place as {b}: foam gives way by no more than {most}.",
    "thruster.mount-missing": "{thruster} has nothing that holds it: choose a mount.",
    "thruster.move-missing": "The task needs the vehicle to {move}, but no thruster {lacks}{why}.",
    "thruster.body-inside": "The motor of {thruster} would sit inside {bar}: it belongs beside the pipe.",
    "thruster.mount-hub": "The mount of {thruster} ({mount}) would sit on the fitting at {joint}, where it has no hold: slide it to bare pipe.",
    "thruster.stub-homeless": "{thruster} is held by a stub, but no fitting at an end of {bar} has an empty socket for it.",
    "thruster.holes-unplanned": "The holes for the ties of {thruster} are not planned: decide where to drill before the pipe is in the frame.",
    "thruster.tie-alone": "Only one hole is planned for {thruster}: a single tie lets it turn on {bar}, so plan a second one.",
    "thruster.tie-aside": "All holes for the ties of {thruster} lie on one side of its middle, {near} away or more: it can swing and slide out, so drill one on each side.",
    "thruster.tie-along": "A hole for the ties of {thruster} is on the {face}, but that is an end of {bar}, not a side: choose another side.",
    "thruster.tie-wide": "A hole for the ties of {thruster} is {diameter} wide, and the pipe of {bar} only {pipe}.",
    "thruster.tie-large": "A hole for the ties of {thruster} is {diameter} wide in a pipe of {pipe}: over {most} of its width {bar} breaks there easily.",
    "thruster.tie-small": "A hole for the ties of {thruster} is {diameter} wide: a usual tie is {tie} wide and does not go through.",
    "thruster.pull-unknown": "Nobody has measured how hard {thruster} pulls: hold it with a spring scale in a bucket.",
    "thruster.disc-touching": "The propeller of {thruster} runs into {part}: it needs {least} all round.",
    "thruster.disc-near": "The propeller of {thruster} passes {part} with only {room} to spare: it needs {least}.",
    "thruster.tether-near": "The {tether} rises {room} from the propeller of {thruster}, which has no guard: {least} is the least.",
    "thruster.stream-blocked": "{part} stands in the stream of {thruster} and costs it about {lost} of its pull {way}.",
    "thruster.disc-shallow": "At rest the edge of the propeller of {thruster} lies {where} the surface: it sucks air unless {least} cover it.",
    "motion.thrust-pitches": "Full thrust ahead {pitch}: the pull acts {lever} {side} where it would balance the drag.",
    "motion.climb-tips": "Climbing at full thrust {tilt}: the upright pull acts {off} from the centre.",
    "motion.thrust-aside": "Full thrust ahead pulls it to {side}: the pull acts {off} off centre, and holding it straight takes {share} of what turns it.",
    "motion.hands-alike": "{who}: at full thrust they roll it {side} side up {roll} degrees.",
    "power.plan-missing": "Nothing is planned between the battery and the motors: choose fuses, plugs and cores before you buy cable.",
    "power.supply-over": "The battery is {volts} V, but the brief allows only {limit} V.",
    "power.motor-over": "{thruster} gets {volts} V, but its kind was tested at {most} V: it would burn out.",
    "power.fuse-missing": "No fuse protects the wires of {thruster}: a short in the water would melt them.",
    "power.main-missing": "No main fuse sits at the battery, and the fuses of the motors come only behind {wires}: a short there would melt the cable.",
    "power.fuse-large": "{fuse} is {amps} A, but the thinnest wire that it protects carries only {most} A: the wire would melt first.",
    "power.fuse-blows": "{fuse} is {amps} A, and {running} A run through it with all motors on{guessed}: it blows and {stops}. {fit}",
    "power.fuse-small": "{fuse} is {amps} A, and {running} A run through it with all motors on{guessed}: it needs {least} A, or it blows in the middle of a run. {fit}",
    "power.fuse-stalled": "With its propeller held fast, {thruster} draws {stalled} A, and {fuse} does not blow: the motor burns out. A smaller fuse still carries the {running} A of a run.",
    "power.fuse-far": "The first fuse sits {distance} from the battery: {most} is the most, for the lead before it has no protection.",
    "power.volts-lost": "Only {volts} V of {battery} V reach {thruster} ({lost} lost), {left}: the tether is too thin for its length.",
    "power.tether-missing": "The wiring has a tether of {length}: nothing reaches from the poolside to the vehicle.",
    "power.tether-short": "The tether is {length} long, and {hanging} of it are to hang in the water: the rest must reach the battery.",
    "tether.hanging-none": "Nothing of {tether} hangs in the water, so its weight, lift and drag are left out: enter how much the vehicle carries.",
    "power.checks-open": "Still to be settled before the first run: {checks}.",
    "float.bar-short": "{item} is {length} long, but {bar} has only {room} of pipe showing.",
    "float.foam-heavy": "{foam} weighs {density} and the water {water}: it sinks instead of lifting. Weigh a piece and measure it, or take another foam.",
    "float.end-over": "{item} reaches {over} past the pipe that shows on {bar}: slide it towards the middle.",
    "balance.weight-over": "Too heavy: it sinks with {net} ({percent} of what it displaces); aim at 10 to 40 g that float.",
    "balance.lift-little": "Only {net} of spare buoyancy ({percent} of what it displaces, and {least} is the least): aim at 10 to 40 g.",
    "balance.lift-over": "Too light: it floats up with {net} ({percent} of what it displaces, and {most} is the most).",
    "balance.thrust-taken": "It floats up with {net}, {share} of the {thrust} that push it down: at most {most} leaves enough to work with.",
    "balance.thrust-beaten": "It floats up with {net}, more than the {thrust} that push it down: it cannot dive.",
    "balance.thrust-sunk": "It sinks with {net}, more than the {thrust} that push it up: it cannot come back.",
    "balance.foam-squeezed": "At depth the foam loses {squeeze} of its room and {lost} of lift: it then sinks with {net}.",
    "balance.trim-off": "At rest it lies {trim}; within {limit} degrees is level enough.",
    "balance.order-inverted": "It rolls over: the middle of its lift is {bg} below the middle of its weight. Floats go high, weights low.",
    "balance.bg-small": "It is tender: its lift acts only {bg} above its weight, and {least} is the least that feels steady.",
    "balance.weight-tips": "{weight} hung {lever} from the middle tilts it {angle} degrees; more than {most} feels tippy.",
    "load.hook-missing": "The task is to lift {load}, but there is no hook.",
    "load.lift-weak": "Lifting {load} needs {needed} of pull and the thrusters pull {up} up, {share} times as much; {least} times is comfortable.",
    "load.trim-off": "With {load} on the hook it lies {trim}.",
    "opening.none-flooded": "The pipes should flood, but no hole lets the water in and the air out.",
    "opening.drain-missing": "Lifted out, {water} of the {room} of water in the pipes stay in, most in {where}: no hole low down lets them drain.",
    "opening.valley-undrained": "Lifted out level, {water} of water stay in the pipes, most in {where}: a valley that water must pour into and cannot drain from.",
    "opening.in-sealed": "{item} is a hole in a frame that is sealed: it would flood.",
    "opening.socket-open": "{joint} has an empty socket, but the frame is sealed: it would flood.",
    "opening.hole-small": "{item} is {diameter} wide: under {least} the skin of the water holds the air back.",
    "opening.hole-large": "{item} is {diameter} wide in a pipe of {pipe}: over {most} of its width it breaks there easily.",
    "opening.face-along": "{item} is on the {face}, but that is an end of {bar}, not a side: choose another side.",
    "opening.face-taken": "{item} is on the {face} of a fitting, where a socket leaves: choose another side.",
    "opening.face-solid": "{item} meets the end wall of a cap, where there is no bore.",
    "opening.hole-plugged": "{item} opens on a plug in {bar}: nothing gets in or out there.",
    "opening.hole-covered": "{item} lies under foam that is stretched over {bar}: it is closed.",
    "opening.socket-drilled": "{item} goes through a socket and the pipe of {bar} in it: both walls would be drilled, and the joint weakened.",
    "opening.socket-near": "{item} is {room} from the face of a socket, and {bar} breaks there easily: keep {least} away.",
    "air.pocket-trapped": "{air} of air stay caught when it lies level, most in {where}: they lift {lift}, turn it {turned} degrees and leak out while you drive. With one degree of tilt it is {least} to {most}.",
    "air.pocket-tilted": "Put into the water {attitude}, it keeps {air} of air, most in {where}: {lift} of lift that shift and leak.",
    "air.void-closed": "{where} has a room of {air} without any opening: it lifts {lift} until it leaks.",
    "air.void-plugged": "The plugs close a room of {air} in {where}: it lifts {lift}, and for good only if they are glued.",
    "sealing.leak-sinks": "Sealed pipes lift {lift}, and nothing inside can be changed once they are glued. At {depth} the water presses with {press} on each square centimetre; after a leak it {leaked}{rescue}.",
    "opening.hole-wide": "{item} is {diameter} wide, and its pipe only {pipe}.",
    "money.commitments-over": "Spent {spent}, and {committed} still to buy: {over} over the limit of {limit}.",
    "money.receipt-missing": "{what} for {amount} on {when} has no receipt, and the brief asks for one with every line.",
    "money.receipt-twice": "Receipt {receipt} of {shop} stands twice for {what}: {amount} counts double.",
    "arrangement.frame-differs": "{name} needs {pieces} that {first} does not have in that number, but the brief asks for the same pieces of frame.",
    "build.piece-off": "{bar} came out {off} too {way}: {length} instead of {planned}. Planes and other cuts have followed it; look whether that suits you.",
    "build.joint-loose": "{count} joints are only pushed together ({joints}): pin or cement them before it goes into the water.",
    "build.foam-late": "{items} must go on before the frame is closed round {bars}, and that step is not ticked: open the frame there, or slit the foam.",
    "trial.weight-off": "It weighs {measured}, and the model says {model}: {share} off. Weigh a fitting and a motor of your own, and look for what was forgotten.",
    "trial.trim-off": "In the water it lies {measured}, and the model says {model}: look for air in the pipes, or for something that sits elsewhere.",
    "trial.spare-off": "Measured spare buoyancy is {measured}, and the model says {model}: {share} of what it displaces. Air in the pipes, wet foam or its density are the usual reasons.",
    "money.limit-over": "The bill is {spent}, which is {over} over the limit of {limit}.",
}


def direction_words(direction: tuple[int, int, int]) -> str:
    """A direction in words, one at 45 degrees without a comma or an "and", so that it may stand in a list.

    >>> direction_words((0, 1, 0)), direction_words((1, 0, -1))
    ('to port', 'slanting ahead-down')
    """
    names = (("ahead", "aft"), ("port", "starboard"), ("up", "down"))
    words = [pair[step < 0] for pair, step in zip(names, direction, strict=True) if step]
    if len(words) > 1:
        return f"slanting {'-'.join(words)}"
    return f"to {words[0]}" if direction[1] else words[0]


def ways_words(directions: list[tuple[int, int, int]]) -> str:
    """Several directions in words, in a fixed order."""
    return listed([direction_words(direction) for direction in sorted(directions, reverse=True)])


def listed(words: list[str]) -> str:
    """Words with commas and a final "and".

    >>> listed(["up", "down", "aft"])
    'up, down and aft'
    """
    return (
        words[0] if len(words) == 1 else ", ".join(words[:-1]) + " and " + words[-1] if words else "nowhere"
    )


def gone_words(names: Sequence[str]) -> str:
    """What is added to the words for another range, where what was measured or counted does not fit it.

    >>> gone_words(["tee", "five-way"]), gone_words([])
    ('; what you measured or counted of tee and five-way does not fit it and is gone', '')
    """
    return (
        f"; what you measured or counted of {listed([*names])} does not fit it and is gone" if names else ""
    )


def one(thing: str) -> str:
    """A thing with its article.

    >>> one("elbow"), one("tee")
    ('an elbow', 'a tee')
    """
    return f"{'an' if thing[:1].lower() in 'aeiou' else 'a'} {thing}"


def counted(count: int, thing: str) -> str:
    """A number of things.

    >>> counted(1, "piece"), counted(4, "piece")
    ('1 piece', '4 pieces')
    """
    return f"{count} {thing}" + ("" if count == 1 else "s")


def trim_words(pitch: float | None, roll: float | None) -> str:
    """Trim in words.

    >>> trim_words(3.25, -12.0)
    'bow up 3.2 degrees, starboard side up 12.0 degrees'
    """
    if pitch is None or roll is None:
        return "any way round, since nothing rights it"
    words = [
        f"{high if angle > 0 else low} up {abs(angle):.1f} degrees"
        for angle, high, low in ((pitch, "bow", "stern"), (roll, "port side", "starboard side"))
        if abs(angle) >= 0.05
    ]
    return ", ".join(words) if words else "level"


def length(metres: float, unit: Unit) -> str:
    """A length [m] for a sentence."""
    return format_length(metres, unit)


def grams(kilograms: float) -> str:
    """A mass [kg] without its sign, for a sentence."""
    return format_mass(abs(kilograms))


def money(amount: float, currency: str) -> str:
    """An amount of money for a sentence."""
    return f"{amount:.2f} {currency}"
