import type { Tongue } from "./tongue.ts";

export const spanish: Tongue = {
  families: [
    {
      why: "Emergency lighting and stops for emergencies have circuits of their own.",
      anywhere: "EMERGENCIA|(PARO|PARADA|SALIDA) EMERGENCIA|BOTON PARO|LLAMADA ENFERMERA|SOCORRO|AUXILIO",
      harmless: "(SALA|ENTRADA) EMERGENCIA",
    },
    {
      why: "The way out must stay lit, marked and open.",
      anywhere: "EVACUACION|(LETRERO|LUZ|LUCES) SALIDA",
      alone: "SALIDA",
    },
    {
      why: "Power or gas seems to be shut off for the whole of something, and somebody may trust that nothing is live.",
      anywhere:
        "CORTE (GENERAL|GAS|LUZ|CORRIENTE|ENERGIA|ELECTRICO)|INTERRUPTOR (GENERAL|PRINCIPAL)|VALVULA|LLAVE GAS|GAS (ON|OFF)|SECCIONADOR|DISYUNTOR|DESCONEXION|AISLAR|SIN TENSION",
      alone: "CORTE",
    },
    {
      why: "Fire alarms, doors and smoke fans answer to the fire system.",
      anywhere: "INCENDIO|ALARMA|BOMBEROS|EXTINTOR|CORTAFUEGO|(DETECTOR|EXTRACCION) HUMO|PANICO",
      alone: "FUEGO",
      harmless: "ALARMA RELOJ|RELOJ ALARMA",
    },
    { why: "Somebody is warned of a danger.", anywhere: "PELIGRO|ALTA TENSION|NO ENTRAR" },
  ],
  shorts: {
    DESCONEXION: "DESCON DESCONECT DESCONECTAR DESCONECTADOR",
    DISYUNTOR: "DISY",
    EMERGENCIA: "EM EMER EMERG",
    EVACUACION: "EVAC EVACUAR",
    GENERAL: "GRAL GEN GRL",
    ELECTRICO: "ELECT ELEC",
    EXTRACCION: "EXTRAC",
    INTERRUPTOR: "INT INTERR INTERRUP",
    PRINCIPAL: "PPAL",
    SALIDA: "SAL",
    SECCIONADOR: "SECC SECCIONADORA",
  },
  fillers: "DE DEL LA EL EN",
};
