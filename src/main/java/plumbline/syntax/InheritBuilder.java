package plumbline.syntax;

import java.util.List;
import plumbline.statement.Command;
import plumbline.statement.PortCommand;
import plumbline.syntax.SwitchConfigParser.InheritContext;
import plumbline.text.Secrets;

/** Makes commands of the lines by which a port takes lines that stand elsewhere. */
final class InheritBuilder extends SwitchConfigParserBaseVisitor<Command> {
  private final Operands operands;

  InheritBuilder(Operands operands) {
    this.operands = operands;
  }

  @Override
  public Command visitInherit(InheritContext line) {
    List<String> names = line.word().stream().map(word -> Secrets.mask(word.getText())).toList();
    if (names.isEmpty() && operands.isSet()) {
      operands.refuse();
    }
    return new PortCommand.Inherit(holder(line), names);
  }

  private static String holder(InheritContext line) {
    if (line.TEMPLATE() != null) {
      return line.TEMPLATE().getText();
    }
    return line.PORT_PROFILE() != null
        ? line.PORT_PROFILE().getText()
        : line.rareProfile().getText();
  }
}
