/** Words that bind an answer, turn it, ask something, or may be what is cut. An unknown word in talk is harmless. Nobody may put one into a yes unseen. */
export const bindingWords: readonly string[] = [
  ..."if|if he agrees|if it fits|if possible|unless|unless he objects|until|until Monday|once|once signed|when|when approved|as soon as|as long as|provided|provided it fits|assuming|subject to|pending|depending".split(
    "|",
  ),
  ..."but|but not|but bigger|however|although|though|except|except 2|except the last|only|only the first|just the left|other than|apart from|without|instead|rather|otherwise|whereas".split(
    "|",
  ),
  ..."not|never|no longer|hardly|barely|nobody|nothing|neither|isn't|won't|can't|cannot|don't|not sure|not yet".split(
    "|",
  ),
  ..."maybe|perhaps|probably|I think|I guess|I hope|I believe|possibly|might be|could be|should be|would be|will be|supposedly|apparently|allegedly|more or less|almost|in theory|for now|so far|for the moment|as far as I know".split(
    "|",
  ),
  ..."same as|same as 2|same as before|like last time|like the other|as in|make it big|make them|change|change it|replace|add|add two|remove|move|use|put|write|spell it out|should read|should say|correct to SALON|delete|cancel|hold|wait for it|stop|check with him|ask".split(
    "|",
  ),
  ..."?|? |what|why|which|who|how many|is it right|are you sure|two of them|3 of them|twice|x2|half|extra|another|different|red|bigger|larger|smaller|bold|in capitals|engraved in French|upside down".split(
    "|",
  ),
  ..."pero|aber|mais|ale|nur|solo|si le client veut|wenn|cuando|nicht|pas|kein|gasket|SALON|Lounge2|xq|$5|12.5|99|by tomorrow|from Friday on|by noon|before lunch|urgent|asap".split(
    "|",
  ),
];
