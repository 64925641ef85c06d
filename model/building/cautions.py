"""The usual cautions, by the work that they belong to (common practice; where it is read, see the reference).

They defer to the makers' instructions, to the rules of the school and of the pool, to local codes and to
licensed people, and are shown where the work is.
"""

SAW = (
    "Eye protection for everybody near; clamp the pipe; an adult stands by at every saw.",
    "Powered saws: a trained adult only. Ratchet cutters: fingers away, shards fly, no cold or old pipe.",
)
DEBURR = ("PVC dust: scrape rather than sand, wipe it up wet, wear a dust mask if you sand.",)
KNIFE = ("Foam knife: cut away from the hand that holds, on a board, an adult stands by.",)
DRILL = (
    "Eye protection; clamp the part in a V-block; no hand behind the wall that is drilled.",
    "No loose sleeves, gloves, cords or hair at a drill; centre-punch, low speed; an adult stands by.",
)
TIES = (
    "Cut tie tails flush and turned away from faces, with eye protection: a cut tail is sharp and flies.",
)
HOT = (
    "Hot glue, soldering irons and heat guns burn: an adult stands by, never left alone.",
    "Never heat PVC: hot PVC gives off acid gas. A sealed pipe is never heated, and is opened slowly.",
)
CEMENT = (
    "Solvent cement, primer, acetone and epoxy: an adult, moving air, no flames, gloves, lids on.",
    "Follow the maker's instructions on the tin; nothing is under pressure and nobody drinks from it.",
)
ELECTRIC = (
    "Low-voltage direct current only; no mains voltage at the poolside; fuse at the battery.",
    "Covered battery terminals, no loose lithium packs; charge in moving air, in a dry room.",
    "A charger needs a residual-current device; such a device does not protect the isolated 12 V side.",
)
WEIGHTS = ("Coated steel rather than lead; wash your hands after handling weights.",)
WATER = (
    "A lifeguard or a responsible adult, one named tether handler, never alone, no running, dry hands.",
    "Battery and plugs stay dry and two metres back. Nobody in the water with a running vehicle unless "
    "the pool's rules allow it.",
    "Unplug before touching a propeller and before hands go in the water; hair and tether clear of it.",
    "Lift out slowly and let it drain, by the frame, never by the tether or dry joints; bend your knees.",
    "In trouble cut the power first, do not jump in; know where the emergency number hangs.",
)
DEFER = (
    "These are the usual cautions. The makers' instructions, the rules of your school and of your pool, "
    "local codes and licensed people come first."
)
