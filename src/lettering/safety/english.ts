import type { Tongue } from "./tongue.ts";

/** Devices of a room that may be switched off without harm. */
const media =
  "(TV|AV|AUDIO|VIDEO|SOUND|AMP|PROJ|PROJECTOR|DISPLAY|SCREEN|MONITOR|CAMERA|MIC|PC|COMPUTER|LAPTOP|RADIO|STEREO|MUSIC)";
/** What has a disconnect of its own. */
const equipment =
  "(MAIN|SERVICE|FUSED?|METER|MOTOR|PUMP|FAN|HVAC|AC|DC|AHU|RTU|UNIT|POWER|PANEL|SOLAR|PV|EV|GENERATOR|BATTERY|ELEVATOR|LIFT|LOCAL|LINE|LOAD|UTILITY|EQUIP|HEATER|BOILER|CHILLER|SAFETY|RAPID)";
const machine =
  "(MACHINE|SAW|TOOL|LATHE|PRESS|CONVEYOR|ESCALATOR|ELEVATOR|LIFT|HOIST|CRANE|PUMP|BOILER|BURNER)";
const wards = "(ROOM|WARD|UNIT|SUITE|BAY|BOOTH|EXAM|BED|LAB|DEPT|\\d+)";

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
        "EGRESS|WAY OUT|ESCAPE (ROUTE|PATH|LIGHT|STAIR|DOOR|HATCH)|EXIT (LIGHT|SIGN|DOOR|PATH|ROUTE|STAIR|CORRIDOR|PASSAGE|DISCHARGE)|(PUSH|PRESS|PULL) EXIT|EVACUATE|AREA REFUGE|MUSTER( POINT)?",
      alone: "EXIT( (ON|OFF|TEST))?|REFUGE",
    },
    {
      why: "Who presses it expects help, or doors that shut: it has to work, and must not be pressed for the lights.",
      anywhere:
        "LIFE SAFETY|SAFETY (LIGHT|SWITCH|STOP|SHOWER|RELAY|CIRCUIT|LOCK|OFF)|PANIC|DURESS|HOLD ?UP|LOCKDOWN|LOCK DOWN|SHELTER PLACE|SOS|NURSE CALL|CODE (BLUE|PINK|RED|WHITE)",
      alone: "SAFE|SAFETY|HELP",
    },
    {
      why: "A stop for emergencies has to break the circuit by itself, stay pressed in and be red on yellow; a button that asks a program does not.",
      anywhere: `(E|EM|EMERGENCY) (STOP|OFF)|ESTOP|EMO|EPO|KILL( (SWITCH|POWER|ALL))?|SHUNT TRIP|${machine} STOP`,
      alone: "TRIP|ABORT|PURGE",
    },
    {
      why: "Whoever works on wires trusts that behind a disconnect nothing is live; a dimmer that is off is none.",
      anywhere: `DISCONNECT( SWITCH)?|${equipment} DISC|DISC (SWITCH|MEANS)|ISOLATE( SWITCH)?|ISO SWITCH|LOCKOUT|LOCK OUT|TAGOUT|TAG OUT|LOTO`,
      alone: "DISC",
      harmless: `ISOLATE ${wards}|ISO ${wards}`,
    },
    {
      why: "Power, gas or fuel seems to be shut off for the whole of something, where perhaps only a light goes out.",
      anywhere:
        "MAINS( (ON|OFF))?|MAIN (POWER|SWITCH|BREAKER|CB|FEED|FEEDER|FUSE|SUPPLY|CONTACTOR|VALVE|GAS)|POWER (OFF|CUT|KILL|DOWN|TRIP)|BREAKER|CB (ON|OFF)|CUT ?OFF|CUT ?OUT|SHUTOFF|SHUT OFF|SHUTDOWN|SHUT DOWN|(GAS|FUEL|PROPANE|OXYGEN) (ON|OFF|VALVE|SHUT|CUT|TRIP)",
      alone: "MAIN( (ON|OFF))?",
      harmless: `${media} (POWER )?(OFF|DOWN|SHUT ?(OFF|DOWN))|(ICE|TIE|CODE) BREAKER|BREAKER (ROOM|HALL|BAR|LOUNGE|SUITE)|SHUT OFF LIGHT`,
    },
    {
      why: "Fire alarms, doors, dampers and smoke fans answer to the fire system and to nobody's lighting control.",
      anywhere:
        "FIRE (ALARM|BELL|MODE|EXIT|ESCAPE|DOOR|SHUTTERS?|DAMPER|CURTAIN|PUMP|OVERRIDE|FAN|PANEL|SYSTEM|SUPPRESSION|STAIR|LIFT|RECALL|TEST|RESET|HORN|STROBE|RELEASE|TRIP)|FIREMANS?|FIREFIGHTERS?|SMOKE (ALARM|DETECTOR|CONTROL|PURGE|VENT|EXHAUST|EXTRACT|FAN|DAMPER|CURTAIN|DOOR|HATCH|OVERRIDE|RELEASE)|ALARM|HALON|DELUGE",
      alone: "FIRE( (ON|OFF))?|SMOKE",
      harmless:
        "(WAKE UP|WAKE|MORNING) ALARM|ALARM (CLOCK|RADIO)|(GAS|LOG|WOOD|OPEN|CAMP|BON) FIRE|FIRE ?(PLACE|PL|PIT)",
    },
    {
      why: "Somebody is warned of a danger, or kept from it.",
      anywhere: "DANGER|WARNING|HAZARD|(HIGH|HI) VOLTAGE|INTERLOCK",
    },
  ],
  shorts: {
    ALARM: "ALARMS ALRM ALM",
    BREAKER: "BREAKERS BKR BKRS BRKR",
    CORRIDOR: "CORR",
    CUTOFF: "CUTOF",
    DISCONNECT: "DISCON DISCONN DISCONS DISCT DISCNT DISCNCT DISCONNECTS DISCONNECTOR",
    DOOR: "DOORS DR",
    DOWN: "DN DWN",
    EGRESS: "EGR EGRS EGRSS",
    EMERGENCY: "EMER EMERG EMG EMGCY EMGY EMGNCY EMRG EMRGY EMERGCY",
    EVACUATE: "EVAC EVACUATION",
    EXHAUST: "EXH EXHST",
    EXIT: "EXITS",
    FAN: "FANS",
    ISOLATE: "ISOL ISOLATOR ISOLATORS ISOLATION ISOLATN ISOLTR ISOLR",
    LIGHT: "LIGHTS LIGHTING LT LTS LTG LTNG LGT LGTS LITE LITES LGHT LGHTS",
    MAIN: "MN",
    METER: "MTR",
    OVERRIDE: "OVR OVRD OVRDE OVERRD",
    POWER: "PWR PWER POWR",
    ROOM: "ROOMS RM RMS",
    SAFETY: "SFTY SAFTY",
    SERVICE: "SVC SERV SVCE",
    SHUTDOWN: "SHUTDN SHUTDWN SHTDN",
    SHUTOFF: "SHTOFF SHUTOF",
    SIGN: "SIGNS SIGNAGE SGN SGNS",
    STAIR: "STAIRS STAIRWAY STAIRWELL",
    SWITCH: "SW SWITCHES SWT SWTCH SWCH",
    VALVE: "VALVES VLV",
    VOLTAGE: "VOLT VOLTS",
  },
  fillers: "THE TO FOR OF IN ALL",
};
