oddities.csv: 18 filas

  caracteres  utf-8
  separador   coma
  decimal     .
  encabezado  línea 1
  comienzo    2/3/2026 8:02:00 AM
  final       2/3/2026 8:15:00 AM
  intervalo   60 s
  se leen     15 de 18 filas, según la entrada de abajo, si nadie cambió la hora del reloj

  columna       números  mínimo    máximo    sin número
  Time          hora
  Temp 1 (Â°F)  100 %    39.0      52.0
  Ch2           87 %     70.0      83.0      13 %: #####, ERR
  Batt          100 %    3.1       3.1

Llama la atención:
- línea 9: otra vez el encabezado
- línea 2: una fila de unidades
- línea 12: otra vez la fila anterior
- línea 16: la hora de la fila anterior con otros valores
- no se distinguen el día, el mes y el año: d/M/yyyy h:mm:ss a o M/d/yyyy h:mm:ss a
- «Ch2»: 1 celdas sobrescritas por una hoja de cálculo
- «Ch2»: quizá no sean lecturas: -127 (2 veces), 185.0
- «Ch2»: 2 de 16 celdas no contienen ningún número

Una entrada para logs.json. Responda a cada "? ": mientras quede una, el registro se rechaza.

{
  "logs" : [
    {
      "files" : "oddities.csv",
      "encoding" : "utf-8",
      "delimiter" : ",",
      "decimal" : ".",
      "time" : {
        "column" : "Time",
        "pattern" : "? d/M/yyyy h:mm:ss a o M/d/yyyy h:mm:ss a",
        "zone" : "? la zona horaria del reloj, como America/New_York; un desfase fijo como -05:00 si nadie cambia la hora del reloj"
      },
      "instrument" : "? el identificador del registrador en el plan",
      "columns" : [
        {
          "column" : "Temp 1 (Â°F)",
          "what" : "? internal temperature, chamber temperature, cooler temperature, water temperature, wet-bulb temperature o humidity; si no es nada de eso, nombre la columna en leftOut, con el motivo",
          "unit" : "°F",
          "item" : "? el nombre de la sonda",
          "lot" : "? el lote en el que estaba la sonda; si es de un lugar, su identificador como \"place\" en vez de \"lot\"; si se puso por otra sonda del lote, además \"continues\" con el item de esa"
        },
        {
          "column" : "Ch2",
          "what" : "? internal temperature, chamber temperature, cooler temperature, water temperature, wet-bulb temperature o humidity; si no es nada de eso, nombre la columna en leftOut, con el motivo",
          "unit" : "°F",
          "item" : "? el nombre de la sonda",
          "lot" : "? el lote en el que estaba la sonda; si es de un lugar, su identificador como \"place\" en vez de \"lot\"; si se puso por otra sonda del lote, además \"continues\" con el item de esa"
        },
        {
          "column" : "Batt",
          "what" : "? internal temperature, chamber temperature, cooler temperature, water temperature, wet-bulb temperature o humidity; si no es nada de eso, nombre la columna en leftOut, con el motivo",
          "unit" : "? °F o °C; para la humedad, %",
          "item" : "? el nombre de la sonda",
          "lot" : "? el lote en el que estaba la sonda; si es de un lugar, su identificador como \"place\" en vez de \"lot\"; si se puso por otra sonda del lote, además \"continues\" con el item de esa"
        }
      ]
    }
  ]
}
