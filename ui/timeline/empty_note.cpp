#include "ui/timeline/empty_note.h"

#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace suppertide::ui {

EmptyNote::EmptyNote(QWidget* parent)
    : QWidget(parent), sentence_(new QLabel(this)), button_(new QPushButton(this))
{
    setObjectName(QStringLiteral("timelineEmptyNote"));
    button_->setObjectName(QStringLiteral("timelineEmptyButton"));
    sentence_->setAlignment(Qt::AlignCenter);
    sentence_->setWordWrap(true);
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(sentence_);
    layout->addWidget(button_, 0, Qt::AlignHCenter);
    connect(button_, &QPushButton::clicked, this, &EmptyNote::triggered);
}

void EmptyNote::say(const QString& sentence, const QString& button)
{
    sentence_->setText(sentence);
    button_->setText(button);
    button_->setVisible(!button.isEmpty());
}

} // namespace suppertide::ui
