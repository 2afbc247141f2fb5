import type { Tongue } from "./tongue.ts";

/** Devices of a room that may be switched off without harm. */
const media =
  "(TV|AV|AUDIO|VIDEO|SOUND|AMP|PROJ|PROJECTOR|DISPLAY|SCREEN|MONITOR|CAMERA|MIC|PC|COMPUTER|LAPTOP|RADIO|STEREO|MUSIC)";
/** What hurts somebody while it runs. */
const machine = "(MACHINE|ROBOT|SAW|LATHE|MILL|DRILL|CONVEYOR|ESCALATOR|ELEVATOR|HOIST|CRANE|BOILER|BURNER)";
const supply = "(GAS|FUEL|PROPANE|OXYGEN|O2|N2|NITROGEN)";
const place = "(ROOM|HALL|BALLROOM|BAR|CAFE|LOUNGE|SUITE|CLUB|OFFICE)";
const ward = "(ROOM|WARD|UNIT|SUITE|BAY|BOOTH|EXAM|BED|LAB|DEPT|CLEAN ROOM|\\d+)";

export const english: Tongue = {
  families: [
    {
      why: "Emergency lighting and its power have circuits of their own, which an ordinary button must not switch off.",
      anywhere: "(EM|EMERGENCY)( (LIGHT|POWER|EXIT|TEST|BYPASS))?",
      harmless: "EMERGENCY (ROOM|DEPT|WARD|MED|MEDICINE|MEDICAL|WAITING|RECEPTION|ENTRANCE|ENTRY)",
    },
    {
      why: "The way out must stay lit, marked and open, whoever presses a button.",
      anywhere:
        "EGRESS|WAY OUT|ESCAPE (ROUTE|PATH|LIGHT|STAIR|DOOR|HATCH)|EXIT (LIGHT|ILLUM|SIGN|DOOR|PATH|ROUTE|STAIR|CORRIDOR|PASSAGE|DISCHARGE)|(LIGHT|SIGN|DOOR|STAIR|PUSH|PRESS|PULL) EXIT|REX (DOOR|BUTTON)|EVACUATE|AREA (REFUGE|RESCUE)|MUSTER( POINT)?|FIRE XIT",
      alone: "EXIT( (ON|OFF|TEST))?|XIT|REFUGE|RESCUE",
    },
    {
      why: "Who presses it expects help, or doors that shut: it has to work, and must not be pressed for the lights.",
      anywhere:
        "LIFE (SAFETY|SUPPORT)|MEDICAL ALERT|SAFETY (LIGHT|SWITCH|STOP|SHOWER|RELAY|CIRCUIT|LOCK|OFF)|PANIC( BUTTON)?|DURESS|ROBBERY|HOLD ?UP|INTRUDER|LOCKDOWN|LOCK DOWN|SHELTER PLACE|SOS|MAYDAY|911|EYE ?WASH|HELP BUTTON|NURSE CALL|CODE (BLUE|PINK|RED|WHITE)",
      alone: "SAFE|SAFETY|HELP",
      harmless: `SOS ${place}`,
    },
    {
      why: "A stop for emergencies has to break the circuit by itself, stay pressed in and be red on yellow; a button that asks a program does not.",
      anywhere: `(E|EM|EMERGENCY) (STOP|OFF)|ESTOP|EMO|EPO|ESD|KILL( (SWITCH|POWER|ALL))?|SHUNT TRIP|${machine} (STOP|OFF)|(LINE|PRESS|PUMP) STOP|STOP ${machine}|BREAK GLASS`,
      alone: "TRIP|ABORT|PURGE",
      harmless: "KILL DEVIL",
    },
    {
      why: "Whoever works on wires trusts that behind a disconnect nothing is live; a dimmer that is off is none.",
      anywhere: `DISCONNECT( SWITCH)?|SERVICE SWITCH|DISC (SWITCH|MEANS|MAIN)|ISOLATE( SWITCH)?|MAIN ISO|${supply} ISO|ISO (SWITCH|VALVE)|LOCKOUT|LOCK OUT|TAGOUT|TAG OUT|LOTO|DEENERGIZE`,
      alone: "(\\S+ )*DISC",
      harmless: `(COMPACT|LASER|RAY|GOLF|FLYING) DISC|(ISOLATE|ISO) ${ward}`,
    },
    {
      why: "Power, gas or fuel seems to be shut off for the whole of something, where perhaps only a light goes out.",
      anywhere: `MAINS( (ON|OFF))?|(MAIN|MASTER) (POWER|SWITCH|BREAKER|CB|FEED|FEEDER|FUSE|SUPPLY|CIRCUIT|CCT|ELEC|CONTACTOR|VALVE|GAS)|(CUT|DROP|KILL) POWER|POWER (OFF|CUT|SHUT|KILL|DOWN|TRIP)|BREAKER|CB (ON|OFF)|CUT ?OFF|CUT ?OUT|SHUTOFF|SHUT OFF|SHUTDOWN|SHUT DOWN|SHUT ${supply}|${supply} (ON|OFF|STOP|SHUT|CUT|TRIP|SOLENOID)|VALVE`,
      alone: "MAIN( (ON|OFF))?",
      harmless: `${media} (POWER )?(OFF|DOWN|SHUT ?(OFF|DOWN))|(ICE|TIE|CODE) BREAKER|BREAKER ${place}|SHUT OFF LIGHT`,
    },
    {
      why: "Fire alarms, doors, dampers and smoke fans answer to the fire system and to nobody's lighting control.",
      anywhere:
        "FIRE (ALARM|ALERT|BELL|MODE|EXIT|ESCAPE|DOOR|SHUTTERS?|DAMPER|CURTAIN|PUMP|OVERRIDE|FAN|PANEL|SYSTEM|SUPPRESSION|STAIR|LIFT|RECALL|TEST|RESET|HORN|STROBE|RELEASE|TRIP|SWITCH|SIGNAL|SERVICE|STOP|ZONE)|FIREMANS?|FIREFIGHTERS?|SMOKE (ALARM|DETECTOR|CONTROL|PURGE|VENT|EXHAUST|EXTRACT|EVACUATE|FAN|DAMPER|CURTAIN|DOOR|HATCH|OVERRIDE|RELEASE)|ALARM|FA (TEST|RESET|PANEL|BELL)|PULL STATION|HALON|DELUGE",
      alone: "FIRE( (ON|OFF))?|FA|SMOKE",
      harmless: `(WAKE UP|WAKE|MORNING) ALARM|ALARM (CLOCK|RADIO)|(GAS|LOG|WOOD|OPEN|CAMP|BON) FIRE|FIRE ?(PLACE|PL|PIT)|ALARM ${place}`,
    },
    {
      why: "Somebody is warned of a danger, or kept from it.",
      anywhere:
        "DANGER|WARNING|CAUTION|LIVE (POWER|WIRE)|NOT ENTER|NO ENTRY|UNSAFE|HAZARD|BIOHAZARD|(HIGH|HI) VOLTAGE|HV (ON|OFF)|ARC FLASH|INTERLOCK|KEEP OUT|RADIATION|(LASER|X ?RAY) (ON|USE)",
      harmless: "RADIATION (ONC|ONCOLOGY|THERAPY|ROOM|WAITING)",
    },
  ],
  shorts: {
    ALARM: "ALARMS ALRM ALM",
    BIOHAZARD: "BIOHAZ",
    BREAKER: "BREAKERS BKR BKRS BRKR",
    BUTTON: "BTN BTTN",
    CORRIDOR: "CORR",
    DEENERGIZE: "DEENERGISE DEENERG",
    DETECTOR: "DET DETECT",
    DISCONNECT: "DISCON DISCONN DISCONS DISCT DISCNT DISCONNECTS DISCONNECTOR",
    DOOR: "DOORS DR",
    DOWN: "DN DWN",
    EGRESS: "EGR",
    EMERGENCY: "EMER EMERG EMG EMY EMCY EMGY",
    ESCAPE: "ESC",
    EVACUATE: "EVAC EVACUATION",
    EXHAUST: "EXH EXHST",
    EXIT: "EXITS",
    FAN: "FANS",
    ISOLATE: "ISOL ISOLATOR ISOLATORS ISOLATION ISLTR",
    LIGHT: "LIGHTS LIGHTING LT LTS LTG LTNG LGT LGTS LITE LITES LGHT LGHTS LAMP LAMPS LMP LMPS",
    LOCK: "LCK LK",
    LOCKOUT: "LOCKOUTS",
    MACHINE: "MACH",
    MAIN: "MN",
    MASTER: "MSTR MSTER",
    METER: "MTR",
    OVERRIDE: "OVR OVRD OVERRD",
    POWER: "PWR PWER POWR",
    RADIATION: "RADIATN",
    ROOM: "ROOMS RM RMS",
    SAFETY: "SFTY SAFTY",
    SERVICE: "SVC SERV SVCE",
    SHUTDOWN: "SHUTDN",
    SHUTOFF: "SHUTOF",
    SIGN: "SIGNS SIGNAGE SGN SGNS",
    SIGNAL: "SIG SGNL",
    SMOKE: "SMK",
    STAIR: "STAIRS STAIRWAY STAIRWELL",
    STATION: "STN STA",
    SWITCH: "SW SWITCHES SWT SWTCH SWCH",
    VALVE: "VALVES VLV",
    VOLTAGE: "VOLT VOLTS",
    WARNING: "WARN",
  },
  fillers: "THE TO FOR OF IN",
};
